using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.PostgreSql
{
    /// <inheritdoc />
    internal partial class AppendOnly : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("CREATE FUNCTION append_only() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION '% is append-only', TG_TABLE_NAME; END $$");
            migrationBuilder.Sql("CREATE TRIGGER history_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON history FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("CREATE TRIGGER texts_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON texts FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("CREATE TRIGGER reports_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON reports FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER history_append_only ON history");
            migrationBuilder.Sql("DROP TRIGGER texts_append_only ON texts");
            migrationBuilder.Sql("DROP TRIGGER reports_append_only ON reports");
            migrationBuilder.Sql("DROP FUNCTION append_only()");
        }
    }
}
