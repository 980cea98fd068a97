using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace Laygate.Service.Api;

/// <summary>The description of the interface.</summary>
internal static class OpenApiSetup
{
    private const string Key = "key";

    public static void Configure(OpenApiOptions options)
    {
        options.ShouldInclude = description => description.RelativePath?.StartsWith("api/", StringComparison.Ordinal) == true;
        options.AddOperationTransformer((operation, _, _) =>
        {
            if (operation.RequestBody?.Content is { } content && content.TryGetValue(Bodies.Form, out var form))
            {
                content[Bodies.ArchiveTypes[0]].Schema = Bytes();
                form.Schema = new OpenApiSchema
                {
                    Type = JsonSchemaType.Object,
                    Properties = new Dictionary<string, IOpenApiSchema>(StringComparer.Ordinal)
                    {
                        ["plan"] = Bytes(),
                        ["file"] = new OpenApiSchema { Type = JsonSchemaType.Array, Items = Bytes() },
                    },
                };
            }

            return Task.CompletedTask;
        });
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new OpenApiInfo
            {
                Title = "Laygate",
                Version = "1",
                Description = "Checks job plans for laying hot asphalt, and keeps what is submitted. It is no approval, permit or safety assessment.",
                License = new OpenApiLicense { Name = "Apache-2.0", Identifier = "Apache-2.0" },
            };
            document.Servers = [new OpenApiServer { Url = "/" }];
            document.Components ??= new OpenApiComponents();
            document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>(StringComparer.Ordinal)
            {
                [Key] = new OpenApiSecurityScheme { Type = SecuritySchemeType.Http, Scheme = "bearer", Description = "A key, or a token of the identity provider where one is set up." },
            };
            document.Security = [new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference(Key, document)] = [] }];
            return Task.CompletedTask;
        });
    }

    private static OpenApiSchema Bytes() => new() { Type = JsonSchemaType.String, Format = "binary" };
}
