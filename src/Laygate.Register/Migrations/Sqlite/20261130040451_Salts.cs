using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.Sqlite
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
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_salt",
                table: "key_history",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "comment_digest",
                table: "history",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "comment_salt",
                table: "history",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_digest",
                table: "history",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_salt",
                table: "history",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_digest",
                table: "comments",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_salt",
                table: "comments",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "text_digest",
                table: "comments",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "text_salt",
                table: "comments",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_digest",
                table: "access_keys",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "name_salt",
                table: "access_keys",
                type: "TEXT",
                nullable: true);

            // A name or a text gives way together with its salt, once; everything else stays. The words stand here as they were: triggers do not change with the program.
            migrationBuilder.Sql("DROP TRIGGER history_no_update");
            migrationBuilder.Sql($"CREATE TRIGGER history_no_update BEFORE UPDATE ON history WHEN {ReplaceTriggers.Refused("IS", ["entry", "number", "at", "event", "by", "report_hash", "screening", "on_own", "open_comments"], ("by_name", "name", "(name replaced)"), ("comment", "comment", "(text replaced)"))} BEGIN SELECT RAISE(ABORT, 'history is append-only'); END");
            migrationBuilder.Sql("DROP TRIGGER comments_no_update");
            migrationBuilder.Sql($"CREATE TRIGGER comments_no_update BEFORE UPDATE ON comments WHEN {ReplaceTriggers.Refused("IS", ["entry", "number", "series", "plan", "rule", "address", "at", "by", "leaves_open"], ("by_name", "name", "(name replaced)"), ("text", "text", "(text replaced)"))} BEGIN SELECT RAISE(ABORT, 'comments is append-only'); END");
            migrationBuilder.Sql("DROP TRIGGER key_history_no_update");
            migrationBuilder.Sql($"CREATE TRIGGER key_history_no_update BEFORE UPDATE ON key_history WHEN {ReplaceTriggers.Refused("IS", ["entry", "key_id", "at", "event", "by"], ("by_name", "name", "(name replaced)"))} BEGIN SELECT RAISE(ABORT, 'key_history is append-only'); END");
            migrationBuilder.Sql("DROP TRIGGER record_files_no_update");
            migrationBuilder.Sql("CREATE TRIGGER record_files_no_update BEFORE UPDATE ON record_files WHEN NOT (NEW.number IS OLD.number AND NEW.upload IS OLD.upload AND NEW.place IS OLD.place AND NEW.name IS OLD.name AND NEW.bytes IS OLD.bytes AND NEW.at IS OLD.at AND NEW.by IS OLD.by AND NEW.by_name IS '(name replaced)' AND OLD.by_name <> NEW.by_name) BEGIN SELECT RAISE(ABORT, 'record_files is append-only'); END");
            migrationBuilder.Sql("DROP TRIGGER access_keys_revoke_only");
            migrationBuilder.Sql($"CREATE TRIGGER access_keys_revoke_only BEFORE UPDATE ON access_keys WHEN {ReplaceTriggers.Refused("IS", ["id", "prefix", "secret_hash", "role", "created_at", "expires_at", "revoked_at"], ("name", "name", "(name replaced)"))} AND NOT (NEW.id = OLD.id AND NEW.prefix = OLD.prefix AND NEW.secret_hash = OLD.secret_hash AND NEW.name = OLD.name AND NEW.role = OLD.role AND NEW.created_at = OLD.created_at AND NEW.expires_at IS OLD.expires_at AND OLD.revoked_at IS NULL AND NEW.revoked_at IS NOT NULL AND NEW.name_salt IS OLD.name_salt AND NEW.name_digest IS OLD.name_digest) BEGIN SELECT RAISE(ABORT, 'access_keys is append-only'); END");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER history_no_update");
            migrationBuilder.Sql("CREATE TRIGGER history_no_update BEFORE UPDATE ON history BEGIN SELECT RAISE(ABORT, 'history is append-only'); END");
            migrationBuilder.Sql("DROP TRIGGER comments_no_update");
            migrationBuilder.Sql("CREATE TRIGGER comments_no_update BEFORE UPDATE ON comments BEGIN SELECT RAISE(ABORT, 'comments is append-only'); END");
            migrationBuilder.Sql("DROP TRIGGER key_history_no_update");
            migrationBuilder.Sql("CREATE TRIGGER key_history_no_update BEFORE UPDATE ON key_history BEGIN SELECT RAISE(ABORT, 'key_history is append-only'); END");
            migrationBuilder.Sql("DROP TRIGGER record_files_no_update");
            migrationBuilder.Sql("CREATE TRIGGER record_files_no_update BEFORE UPDATE ON record_files BEGIN SELECT RAISE(ABORT, 'record_files is append-only'); END");
            migrationBuilder.Sql("DROP TRIGGER access_keys_revoke_only");
            migrationBuilder.Sql("CREATE TRIGGER access_keys_revoke_only BEFORE UPDATE ON access_keys WHEN NOT (NEW.id = OLD.id AND NEW.prefix = OLD.prefix AND NEW.secret_hash = OLD.secret_hash AND NEW.name = OLD.name AND NEW.role = OLD.role AND NEW.created_at = OLD.created_at AND NEW.expires_at IS OLD.expires_at AND OLD.revoked_at IS NULL AND NEW.revoked_at IS NOT NULL) BEGIN SELECT RAISE(ABORT, 'access_keys is append-only'); END");

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
