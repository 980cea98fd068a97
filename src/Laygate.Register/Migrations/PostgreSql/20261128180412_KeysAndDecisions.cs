using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Laygate.Register.Migrations.PostgreSql
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
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateTable(
                name: "key_history",
                columns: table => new
                {
                    entry = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    key_id = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    @event = table.Column<string>(name: "event", type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    by_name = table.Column<string>(type: "text", nullable: false)
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
            migrationBuilder.Sql("CREATE TRIGGER key_history_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON key_history FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("CREATE TRIGGER access_keys_append_only BEFORE DELETE OR TRUNCATE ON access_keys FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("CREATE TRIGGER access_keys_revoke_only BEFORE UPDATE ON access_keys FOR EACH ROW WHEN (NOT (NEW.id = OLD.id AND NEW.prefix = OLD.prefix AND NEW.secret_hash = OLD.secret_hash AND NEW.name = OLD.name AND NEW.role = OLD.role AND NEW.created_at = OLD.created_at AND NEW.expires_at IS NOT DISTINCT FROM OLD.expires_at AND OLD.revoked_at IS NULL AND NEW.revoked_at IS NOT NULL)) EXECUTE FUNCTION append_only()");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER access_keys_revoke_only ON access_keys");
            migrationBuilder.Sql("DROP TRIGGER access_keys_append_only ON access_keys");
            migrationBuilder.Sql("DROP TRIGGER key_history_append_only ON key_history");

            migrationBuilder.DropTable(
                name: "key_history");

            migrationBuilder.DropColumn(
                name: "on_own",
                table: "history");
        }
    }
}
