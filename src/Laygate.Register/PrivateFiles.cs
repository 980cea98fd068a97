namespace Laygate.Register;

/// <summary>Files that only the account of the service may read. On Windows the folder's own list of rights decides.</summary>
internal static class PrivateFiles
{
    private const UnixFileMode Owner = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>Makes a folder for this account only; one that is there keeps its rights.</summary>
    public static void MakeFolder(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(path);
        }
        else if (!Directory.Exists(path))
        {
            Directory.CreateDirectory(path, Owner | UnixFileMode.UserExecute);
        }
    }

    /// <summary>Makes an empty file for this account only, or takes the rights of others from one that is there.</summary>
    public static void MakeFile(string path)
    {
        try
        {
            Make(path);
        }
        catch (IOException) when (File.Exists(path))
        {
            Close(path);
        }
    }

    /// <summary>Makes an empty file for this account only.</summary>
    /// <exception cref="IOException">Something of that name is there.</exception>
    public static void Make(string path) => new FileStream(path, Options(FileMode.CreateNew, FileShare.None)).Dispose();

    /// <summary>How to open a file for this account only.</summary>
    public static FileStreamOptions Options(FileMode mode, FileShare share)
    {
        var options = new FileStreamOptions { Mode = mode, Access = FileAccess.ReadWrite, Share = share };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = Owner;
        }

        return options;
    }

    /// <summary>Takes the rights of others from a file, if it is there.</summary>
    public static void Close(string path)
    {
        if (!OperatingSystem.IsWindows() && File.Exists(path) && (File.GetUnixFileMode(path) & ~Owner) != UnixFileMode.None)
        {
            File.SetUnixFileMode(path, Owner);
        }
    }
}
