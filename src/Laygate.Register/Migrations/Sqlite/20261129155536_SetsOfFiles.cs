using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.Sqlite
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
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "files",
                table: "submissions",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.CreateTable(
                name: "archives",
                columns: table => new
                {
                    number = table.Column<long>(type: "INTEGER", nullable: false),
                    bytes = table.Column<byte[]>(type: "BLOB", nullable: false)
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
                    number = table.Column<long>(type: "INTEGER", nullable: false),
                    place = table.Column<int>(type: "INTEGER", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    bytes = table.Column<byte[]>(type: "BLOB", nullable: false)
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

            migrationBuilder.Sql("CREATE TRIGGER files_no_update BEFORE UPDATE ON files BEGIN SELECT RAISE(ABORT, 'files is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER files_no_delete BEFORE DELETE ON files BEGIN SELECT RAISE(ABORT, 'files is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER archives_no_update BEFORE UPDATE ON archives BEGIN SELECT RAISE(ABORT, 'archives is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER archives_no_delete BEFORE DELETE ON archives BEGIN SELECT RAISE(ABORT, 'archives is append-only'); END");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER files_no_update");
            migrationBuilder.Sql("DROP TRIGGER files_no_delete");
            migrationBuilder.Sql("DROP TRIGGER archives_no_update");
            migrationBuilder.Sql("DROP TRIGGER archives_no_delete");

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
