using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.PostgreSql
{
    /// <inheritdoc />
    internal partial class ShiftRecords : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "record_files",
                columns: table => new
                {
                    number = table.Column<long>(type: "bigint", nullable: false),
                    upload = table.Column<int>(type: "integer", nullable: false),
                    place = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    by_name = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_record_files", x => new { x.number, x.upload, x.place });
                    table.ForeignKey(
                        name: "FK_record_files_submissions_number",
                        column: x => x.number,
                        principalTable: "submissions",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.Sql("CREATE TRIGGER record_files_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON record_files FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER record_files_append_only ON record_files");

            migrationBuilder.DropTable(
                name: "record_files");
        }
    }
}
