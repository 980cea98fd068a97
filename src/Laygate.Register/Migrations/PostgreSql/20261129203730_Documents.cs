using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.PostgreSql
{
    /// <inheritdoc />
    internal partial class Documents : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "documents",
                columns: table => new
                {
                    number = table.Column<long>(type: "bigint", nullable: false),
                    screening = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    type = table.Column<string>(type: "text", nullable: false),
                    policy = table.Column<string>(type: "text", nullable: true),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_documents", x => new { x.number, x.screening, x.name });
                    table.ForeignKey(
                        name: "FK_documents_submissions_number",
                        column: x => x.number,
                        principalTable: "submissions",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.Sql("CREATE TRIGGER documents_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON documents FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER documents_append_only ON documents");

            migrationBuilder.DropTable(
                name: "documents");
        }
    }
}
