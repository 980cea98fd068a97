using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.PostgreSql
{
    /// <inheritdoc />
    internal partial class Contents : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "texts",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "texts",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "sought_at",
                table: "submissions",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "reports",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "reports",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "record_files",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "record_files",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "pictures",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "pictures",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "files",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "files",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "documents",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "documents",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "archives",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "archives",
                type: "text",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "replacements",
                columns: table => new
                {
                    entry = table.Column<long>(type: "bigint", nullable: false),
                    line = table.Column<int>(type: "integer", nullable: false),
                    number = table.Column<long>(type: "bigint", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    of = table.Column<int>(type: "integer", nullable: false),
                    place = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    before = table.Column<string>(type: "text", nullable: false),
                    after = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_replacements", x => new { x.entry, x.line });
                    table.ForeignKey(
                        name: "FK_replacements_history_entry",
                        column: x => x.entry,
                        principalTable: "history",
                        principalColumn: "entry",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_replacements_submissions_number",
                        column: x => x.number,
                        principalTable: "submissions",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_replacements_number_kind_of_place_name",
                table: "replacements",
                columns: new[] { "number", "kind", "of", "place", "name" });

            // Contents change together with salt and digest, where an entry of the history says so; an entry takes the hash of its report as it stands.
            const string Same = "IS NOT DISTINCT FROM";
            migrationBuilder.Sql("CREATE TRIGGER replacements_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON replacements FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql(Let("replacements_said", "EXISTS (SELECT 1 FROM history h WHERE h.entry = NEW.entry AND h.event = 'NamesReplaced')"));
            migrationBuilder.Sql("CREATE TRIGGER replacements_said BEFORE INSERT ON replacements FOR EACH ROW EXECUTE FUNCTION replacements_said()");
            migrationBuilder.Sql("DROP TRIGGER record_files_replace_only ON record_files");
            foreach (var table in ContentTriggers.All)
            {
                migrationBuilder.Sql($"DROP TRIGGER {table.Table}_append_only ON {table.Table}");
                migrationBuilder.Sql($"CREATE TRIGGER {table.Table}_append_only BEFORE DELETE OR TRUNCATE ON {table.Table} FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
                migrationBuilder.Sql(Let($"{table.Table}_replace_only", ContentTriggers.Allowed(Same, table)));
                migrationBuilder.Sql($"CREATE TRIGGER {table.Table}_replace_only BEFORE UPDATE ON {table.Table} FOR EACH ROW EXECUTE FUNCTION {table.Table}_replace_only()");
            }

            migrationBuilder.Sql("DROP TRIGGER history_replace_only ON history");
            migrationBuilder.Sql(Let("history_replace_only", ContentTriggers.HashAllowed(Same)));
            migrationBuilder.Sql($"CREATE TRIGGER history_replace_only BEFORE UPDATE ON history FOR EACH ROW WHEN ({ReplaceTriggers.Refused(Same, ["entry", "number", "at", "event", "by", "report_hash", "screening", "on_own", "open_comments"], ("by_name", "name", "(name replaced)"), ("comment", "comment", "(text replaced)"))}) EXECUTE FUNCTION history_replace_only()");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            const string Same = "IS NOT DISTINCT FROM";
            foreach (var (table, _, _, _) in ContentTriggers.All)
            {
                migrationBuilder.Sql($"DROP TRIGGER {table}_replace_only ON {table}");
                migrationBuilder.Sql($"DROP FUNCTION {table}_replace_only()");
                if (table is not "record_files")
                {
                    migrationBuilder.Sql($"DROP TRIGGER {table}_append_only ON {table}");
                    migrationBuilder.Sql($"CREATE TRIGGER {table}_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON {table} FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
                }
            }

            migrationBuilder.Sql($"CREATE TRIGGER record_files_replace_only BEFORE UPDATE ON record_files FOR EACH ROW WHEN (NOT (NEW.number {Same} OLD.number AND NEW.upload {Same} OLD.upload AND NEW.place {Same} OLD.place AND NEW.name {Same} OLD.name AND NEW.bytes {Same} OLD.bytes AND NEW.at {Same} OLD.at AND NEW.by {Same} OLD.by AND NEW.by_name {Same} '(name replaced)' AND OLD.by_name <> NEW.by_name)) EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("DROP TRIGGER history_replace_only ON history");
            migrationBuilder.Sql("DROP FUNCTION history_replace_only()");
            migrationBuilder.Sql($"CREATE TRIGGER history_replace_only BEFORE UPDATE ON history FOR EACH ROW WHEN ({ReplaceTriggers.Refused(Same, ["entry", "number", "at", "event", "by", "report_hash", "screening", "on_own", "open_comments"], ("by_name", "name", "(name replaced)"), ("comment", "comment", "(text replaced)"))}) EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("DROP TRIGGER replacements_said ON replacements");
            migrationBuilder.Sql("DROP FUNCTION replacements_said()");

            migrationBuilder.DropTable(
                name: "replacements");

            migrationBuilder.DropColumn(
                name: "digest",
                table: "texts");

            migrationBuilder.DropColumn(
                name: "salt",
                table: "texts");

            migrationBuilder.DropColumn(
                name: "sought_at",
                table: "submissions");

            migrationBuilder.DropColumn(
                name: "digest",
                table: "reports");

            migrationBuilder.DropColumn(
                name: "salt",
                table: "reports");

            migrationBuilder.DropColumn(
                name: "digest",
                table: "record_files");

            migrationBuilder.DropColumn(
                name: "salt",
                table: "record_files");

            migrationBuilder.DropColumn(
                name: "digest",
                table: "pictures");

            migrationBuilder.DropColumn(
                name: "salt",
                table: "pictures");

            migrationBuilder.DropColumn(
                name: "digest",
                table: "files");

            migrationBuilder.DropColumn(
                name: "salt",
                table: "files");

            migrationBuilder.DropColumn(
                name: "digest",
                table: "documents");

            migrationBuilder.DropColumn(
                name: "salt",
                table: "documents");

            migrationBuilder.DropColumn(
                name: "digest",
                table: "archives");

            migrationBuilder.DropColumn(
                name: "salt",
                table: "archives");
        }

        // Lets a change through where a condition holds that asks other tables, which a trigger by itself cannot.
        private static string Let(string name, string condition) =>
            $"CREATE FUNCTION {name}() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN IF {condition} THEN RETURN NEW; END IF; RAISE EXCEPTION '% is append-only', TG_TABLE_NAME; END $$";
    }
}
