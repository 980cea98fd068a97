using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.Sqlite
{
    /// <inheritdoc />
    internal partial class KeysAndDecisions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "on_own",
                table: "history",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateTable(
                name: "key_history",
                columns: table => new
                {
                    entry = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    key_id = table.Column<string>(type: "TEXT", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    @event = table.Column<string>(name: "event", type: "TEXT", nullable: false),
                    by = table.Column<string>(type: "TEXT", nullable: false),
                    by_name = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_key_history", x => x.entry);
                    table.ForeignKey(
                        name: "FK_key_history_access_keys_key_id",
                        column: x => x.key_id,
                        principalTable: "access_keys",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_key_history_key_id_event",
                table: "key_history",
                columns: new[] { "key_id", "event" },
                unique: true);

            // Of a key only the moment of its end by hand is ever written, and once.
            migrationBuilder.Sql("CREATE TRIGGER key_history_no_update BEFORE UPDATE ON key_history BEGIN SELECT RAISE(ABORT, 'key_history is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER key_history_no_delete BEFORE DELETE ON key_history BEGIN SELECT RAISE(ABORT, 'key_history is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER access_keys_no_delete BEFORE DELETE ON access_keys BEGIN SELECT RAISE(ABORT, 'access_keys is append-only'); END");
            migrationBuilder.Sql("CREATE TRIGGER access_keys_revoke_only BEFORE UPDATE ON access_keys WHEN NOT (NEW.id = OLD.id AND NEW.prefix = OLD.prefix AND NEW.secret_hash = OLD.secret_hash AND NEW.name = OLD.name AND NEW.role = OLD.role AND NEW.created_at = OLD.created_at AND NEW.expires_at IS OLD.expires_at AND OLD.revoked_at IS NULL AND NEW.revoked_at IS NOT NULL) BEGIN SELECT RAISE(ABORT, 'access_keys is append-only'); END");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER access_keys_revoke_only");
            migrationBuilder.Sql("DROP TRIGGER access_keys_no_delete");
            migrationBuilder.Sql("DROP TRIGGER key_history_no_delete");
            migrationBuilder.Sql("DROP TRIGGER key_history_no_update");

            migrationBuilder.DropTable(
                name: "key_history");

            migrationBuilder.DropColumn(
                name: "on_own",
                table: "history");
        }
    }
}
