using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.Sqlite
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
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "texts",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "sought_at",
                table: "submissions",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "reports",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "reports",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "record_files",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "record_files",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "pictures",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "pictures",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "files",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "files",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "documents",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "documents",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "digest",
                table: "archives",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "salt",
                table: "archives",
                type: "TEXT",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "replacements",
                columns: table => new
                {
                    entry = table.Column<long>(type: "INTEGER", nullable: false),
                    line = table.Column<int>(type: "INTEGER", nullable: false),
                    number = table.Column<long>(type: "INTEGER", nullable: false),
                    kind = table.Column<string>(type: "TEXT", nullable: false),
                    of = table.Column<int>(type: "INTEGER", nullable: false),
                    place = table.Column<int>(type: "INTEGER", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    before = table.Column<string>(type: "TEXT", nullable: false),
                    after = table.Column<string>(type: "TEXT", nullable: false)
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
            migrationBuilder.Sql("CREATE TRIGGER replacements_no_update BEFORE UPDATE ON replacements BEGIN SELECT RAISE(ABORT, 'replacements is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER replacements_no_delete BEFORE DELETE ON replacements BEGIN SELECT RAISE(ABORT, 'replacements is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER replacements_said BEFORE INSERT ON replacements WHEN NOT EXISTS (SELECT 1 FROM history h WHERE h.entry = NEW.entry AND h.event = 'NamesReplaced') BEGIN SELECT RAISE(ABORT, 'replacements is append-only'); END");
            foreach (var table in ContentTriggers.All)
            {
                migrationBuilder.Sql($"DROP TRIGGER {table.Table}_no_update");
                migrationBuilder.Sql($"CREATE TRIGGER {table.Table}_no_update BEFORE UPDATE ON {table.Table} WHEN NOT ({ContentTriggers.Allowed("IS", table)}) BEGIN SELECT RAISE(ABORT, '{table.Table} is append-only'); END");
            }

            migrationBuilder.Sql("DROP TRIGGER history_no_update");
            migrationBuilder.Sql($"CREATE TRIGGER history_no_update BEFORE UPDATE ON history WHEN {ReplaceTriggers.Refused("IS", ["entry", "number", "at", "event", "by", "report_hash", "screening", "on_own", "open_comments"], ("by_name", "name", "(name replaced)"), ("comment", "comment", "(text replaced)"))} AND NOT ({ContentTriggers.HashAllowed("IS")}) BEGIN SELECT RAISE(ABORT, 'history is append-only'); END");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            foreach (var (table, _, _, _) in ContentTriggers.All)
            {
                migrationBuilder.Sql($"DROP TRIGGER {table}_no_update");
                migrationBuilder.Sql(table is "record_files"
                    ? "CREATE TRIGGER record_files_no_update BEFORE UPDATE ON record_files WHEN NOT (NEW.number IS OLD.number AND NEW.upload IS OLD.upload AND NEW.place IS OLD.place AND NEW.name IS OLD.name AND NEW.bytes IS OLD.bytes AND NEW.at IS OLD.at AND NEW.by IS OLD.by AND NEW.by_name IS '(name replaced)' AND OLD.by_name <> NEW.by_name) BEGIN SELECT RAISE(ABORT, 'record_files is append-only'); END"
                    : $"CREATE TRIGGER {table}_no_update BEFORE UPDATE ON {table} BEGIN SELECT RAISE(ABORT, '{table} is append-only'); END");
            }

            migrationBuilder.Sql("DROP TRIGGER history_no_update");
            migrationBuilder.Sql($"CREATE TRIGGER history_no_update BEFORE UPDATE ON history WHEN {ReplaceTriggers.Refused("IS", ["entry", "number", "at", "event", "by", "report_hash", "screening", "on_own", "open_comments"], ("by_name", "name", "(name replaced)"), ("comment", "comment", "(text replaced)"))} BEGIN SELECT RAISE(ABORT, 'history is append-only'); END");

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
    }
}
