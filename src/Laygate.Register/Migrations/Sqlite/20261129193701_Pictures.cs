using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.Sqlite
{
    /// <inheritdoc />
    internal partial class Pictures : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "pictures",
                columns: table => new
                {
                    number = table.Column<long>(type: "INTEGER", nullable: false),
                    screening = table.Column<int>(type: "INTEGER", nullable: false),
                    bytes = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_pictures", x => new { x.number, x.screening });
                    table.ForeignKey(
                        name: "FK_pictures_submissions_number",
                        column: x => x.number,
                        principalTable: "submissions",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.Sql("CREATE TRIGGER pictures_no_update BEFORE UPDATE ON pictures BEGIN SELECT RAISE(ABORT, 'pictures is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER pictures_no_delete BEFORE DELETE ON pictures BEGIN SELECT RAISE(ABORT, 'pictures is append-only'); END");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER pictures_no_update");
            migrationBuilder.Sql("DROP TRIGGER pictures_no_delete");

            migrationBuilder.DropTable(
                name: "pictures");
        }
    }
}
