using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.Sqlite
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
                    number = table.Column<long>(type: "INTEGER", nullable: false),
                    upload = table.Column<int>(type: "INTEGER", nullable: false),
                    place = table.Column<int>(type: "INTEGER", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    bytes = table.Column<byte[]>(type: "BLOB", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    by = table.Column<string>(type: "TEXT", nullable: false),
                    by_name = table.Column<string>(type: "TEXT", nullable: false)
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

            migrationBuilder.Sql("CREATE TRIGGER record_files_no_update BEFORE UPDATE ON record_files BEGIN SELECT RAISE(ABORT, 'record_files is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER record_files_no_delete BEFORE DELETE ON record_files BEGIN SELECT RAISE(ABORT, 'record_files is append-only'); END");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER record_files_no_update");
            migrationBuilder.Sql("DROP TRIGGER record_files_no_delete");

            migrationBuilder.DropTable(
                name: "record_files");
        }
    }
}
