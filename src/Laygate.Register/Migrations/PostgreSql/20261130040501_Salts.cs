using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.PostgreSql
{
    /// <inheritdoc />
    internal partial class Salts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "name_digest",
                table: "key_history",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_salt",
                table: "key_history",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "comment_digest",
                table: "history",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "comment_salt",
                table: "history",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_digest",
                table: "history",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_salt",
                table: "history",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_digest",
                table: "comments",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_salt",
                table: "comments",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "text_digest",
                table: "comments",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "text_salt",
                table: "comments",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_digest",
                table: "access_keys",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_salt",
                table: "access_keys",
                type: "text",
                nullable: true);

            // A name or a text gives way together with its salt, once; everything else stays. The words stand here as they were: triggers do not change with the program.
            migrationBuilder.Sql("DROP TRIGGER history_append_only ON history");
            migrationBuilder.Sql("CREATE TRIGGER history_append_only BEFORE DELETE OR TRUNCATE ON history FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql($"CREATE TRIGGER history_replace_only BEFORE UPDATE ON history FOR EACH ROW WHEN ({ReplaceTriggers.Refused("IS NOT DISTINCT FROM", ["entry", "number", "at", "event", "by", "report_hash", "screening", "on_own", "open_comments"], ("by_name", "name", "(name replaced)"), ("comment", "comment", "(text replaced)"))}) EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("DROP TRIGGER comments_append_only ON comments");
            migrationBuilder.Sql("CREATE TRIGGER comments_append_only BEFORE DELETE OR TRUNCATE ON comments FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql($"CREATE TRIGGER comments_replace_only BEFORE UPDATE ON comments FOR EACH ROW WHEN ({ReplaceTriggers.Refused("IS NOT DISTINCT FROM", ["entry", "number", "series", "plan", "rule", "address", "at", "by", "leaves_open"], ("by_name", "name", "(name replaced)"), ("text", "text", "(text replaced)"))}) EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("DROP TRIGGER key_history_append_only ON key_history");
            migrationBuilder.Sql("CREATE TRIGGER key_history_append_only BEFORE DELETE OR TRUNCATE ON key_history FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql($"CREATE TRIGGER key_history_replace_only BEFORE UPDATE ON key_history FOR EACH ROW WHEN ({ReplaceTriggers.Refused("IS NOT DISTINCT FROM", ["entry", "key_id", "at", "event", "by"], ("by_name", "name", "(name replaced)"))}) EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("DROP TRIGGER record_files_append_only ON record_files");
            migrationBuilder.Sql("CREATE TRIGGER record_files_append_only BEFORE DELETE OR TRUNCATE ON record_files FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("CREATE TRIGGER record_files_replace_only BEFORE UPDATE ON record_files FOR EACH ROW WHEN (NOT (NEW.number IS NOT DISTINCT FROM OLD.number AND NEW.upload IS NOT DISTINCT FROM OLD.upload AND NEW.place IS NOT DISTINCT FROM OLD.place AND NEW.name IS NOT DISTINCT FROM OLD.name AND NEW.bytes IS NOT DISTINCT FROM OLD.bytes AND NEW.at IS NOT DISTINCT FROM OLD.at AND NEW.by IS NOT DISTINCT FROM OLD.by AND NEW.by_name = '(name replaced)' AND OLD.by_name <> NEW.by_name)) EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("DROP TRIGGER access_keys_revoke_only ON access_keys");
            migrationBuilder.Sql($"CREATE TRIGGER access_keys_revoke_only BEFORE UPDATE ON access_keys FOR EACH ROW WHEN ({ReplaceTriggers.Refused("IS NOT DISTINCT FROM", ["id", "prefix", "secret_hash", "role", "created_at", "expires_at", "revoked_at"], ("name", "name", "(name replaced)"))} AND NOT (NEW.id = OLD.id AND NEW.prefix = OLD.prefix AND NEW.secret_hash = OLD.secret_hash AND NEW.name = OLD.name AND NEW.role = OLD.role AND NEW.created_at = OLD.created_at AND NEW.expires_at IS NOT DISTINCT FROM OLD.expires_at AND OLD.revoked_at IS NULL AND NEW.revoked_at IS NOT NULL AND NEW.name_salt IS NOT DISTINCT FROM OLD.name_salt AND NEW.name_digest IS NOT DISTINCT FROM OLD.name_digest)) EXECUTE FUNCTION append_only()");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER history_replace_only ON history");
            migrationBuilder.Sql("DROP TRIGGER history_append_only ON history");
            migrationBuilder.Sql("CREATE TRIGGER history_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON history FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("DROP TRIGGER comments_replace_only ON comments");
            migrationBuilder.Sql("DROP TRIGGER comments_append_only ON comments");
            migrationBuilder.Sql("CREATE TRIGGER comments_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON comments FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("DROP TRIGGER key_history_replace_only ON key_history");
            migrationBuilder.Sql("DROP TRIGGER key_history_append_only ON key_history");
            migrationBuilder.Sql("CREATE TRIGGER key_history_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON key_history FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("DROP TRIGGER record_files_replace_only ON record_files");
            migrationBuilder.Sql("DROP TRIGGER record_files_append_only ON record_files");
            migrationBuilder.Sql("CREATE TRIGGER record_files_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON record_files FOR EACH STATEMENT EXECUTE FUNCTION append_only()");
            migrationBuilder.Sql("DROP TRIGGER access_keys_revoke_only ON access_keys");
            migrationBuilder.Sql("CREATE TRIGGER access_keys_revoke_only BEFORE UPDATE ON access_keys FOR EACH ROW WHEN (NOT (NEW.id = OLD.id AND NEW.prefix = OLD.prefix AND NEW.secret_hash = OLD.secret_hash AND NEW.name = OLD.name AND NEW.role = OLD.role AND NEW.created_at = OLD.created_at AND NEW.expires_at IS NOT DISTINCT FROM OLD.expires_at AND OLD.revoked_at IS NULL AND NEW.revoked_at IS NOT NULL)) EXECUTE FUNCTION append_only()");

            migrationBuilder.DropColumn(
                name: "name_digest",
                table: "key_history");

            migrationBuilder.DropColumn(
                name: "name_salt",
                table: "key_history");

            migrationBuilder.DropColumn(
                name: "comment_digest",
                table: "history");

            migrationBuilder.DropColumn(
                name: "comment_salt",
                table: "history");

            migrationBuilder.DropColumn(
                name: "name_digest",
                table: "history");

            migrationBuilder.DropColumn(
                name: "name_salt",
                table: "history");

            migrationBuilder.DropColumn(
                name: "name_digest",
                table: "comments");

            migrationBuilder.DropColumn(
                name: "name_salt",
                table: "comments");

            migrationBuilder.DropColumn(
                name: "text_digest",
                table: "comments");

            migrationBuilder.DropColumn(
                name: "text_salt",
                table: "comments");

            migrationBuilder.DropColumn(
                name: "name_digest",
                table: "access_keys");

            migrationBuilder.DropColumn(
                name: "name_salt",
                table: "access_keys");
        }
    }
}
