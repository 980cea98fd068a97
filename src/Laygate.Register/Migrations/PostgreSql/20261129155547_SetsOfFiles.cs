using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.PostgreSql
{
    /// <inheritdoc />
    internal partial class SetsOfFiles : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "archive_name",
                table: "submissions",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "files",
                table: "submissions",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.CreateTable(
                name: "archives",
                columns: table => new
                {
                    number = table.Column<long>(type: "bigint", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_archives", x => x.number);
                    table.ForeignKey(
                        name: "FK_archives_submissions_number",
                        column: x => x.number,
                        principalTable: "submissions",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "files",
                columns: table => new
                {
                    number = table.Column<long>(type: "bigint", nullable: false),
                    place = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_files", x => new { x.number, x.place });
                    table.ForeignKey(
                        name: "FK_files_submissions_number",
                        column: x => x.number,
                        principalTable: "submissions",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.Sql("CREATE TRIGGER files_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON files FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("CREATE TRIGGER archives_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON archives FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER files_append_only ON files");
            migrationBuilder.Sql("DROP TRIGGER archives_append_only ON archives");

            migrationBuilder.DropTable(
                name: "archives");

            migrationBuilder.DropTable(
                name: "files");

            migrationBuilder.DropColumn(
                name: "archive_name",
                table: "submissions");

            migrationBuilder.DropColumn(
                name: "files",
                table: "submissions");
        }
    }
}
