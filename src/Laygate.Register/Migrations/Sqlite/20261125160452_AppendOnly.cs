using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.Sqlite
{
    /// <inheritdoc />
    internal partial class AppendOnly : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("CREATE TRIGGER history_no_update BEFORE UPDATE ON history BEGIN SELECT RAISE(ABORT, 'history is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER history_no_delete BEFORE DELETE ON history BEGIN SELECT RAISE(ABORT, 'history is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER texts_no_update BEFORE UPDATE ON texts BEGIN SELECT RAISE(ABORT, 'texts is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER texts_no_delete BEFORE DELETE ON texts BEGIN SELECT RAISE(ABORT, 'texts is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER reports_no_update BEFORE UPDATE ON reports BEGIN SELECT RAISE(ABORT, 'reports is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER reports_no_delete BEFORE DELETE ON reports BEGIN SELECT RAISE(ABORT, 'reports is append-only'); END");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER history_no_update");
            migrationBuilder.Sql("DROP TRIGGER history_no_delete");
            migrationBuilder.Sql("DROP TRIGGER texts_no_update");
            migrationBuilder.Sql("DROP TRIGGER texts_no_delete");
            migrationBuilder.Sql("DROP TRIGGER reports_no_update");
            migrationBuilder.Sql("DROP TRIGGER reports_no_delete");
        }
    }
}
