namespace Laygate.Register.Storage;

/// <summary>A lock between processes on one machine that ends with the process, however it ends.</summary>
internal static class FileLock
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);

    /// <summary>Waits until the lock is free and takes it.</summary>
    public static async Task<FileStream> TakeAsync(string path, TimeProvider clock, CancellationToken cancel)
    {
        while (true)
        {
            try
            {
                return new FileStream(path, PrivateFiles.Options(FileMode.OpenOrCreate, FileShare.None));
            }
            catch (IOException) when (File.Exists(path))
            {
                await Task.Delay(Pause, clock, cancel);
            }
        }
    }
}
