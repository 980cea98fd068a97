using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Laygate.Register.Migrations.PostgreSql
{
    /// <inheritdoc />
    internal partial class Sessions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "protection_keys",
                columns: table => new
                {
                    entry = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    name = table.Column<string>(type: "text", nullable: false),
                    xml = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_protection_keys", x => x.entry);
                });

            migrationBuilder.CreateTable(
                name: "sessions",
                columns: table => new
                {
                    id = table.Column<string>(type: "text", nullable: false),
                    secret_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    caller = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    role = table.Column<string>(type: "text", nullable: false),
                    key_id = table.Column<string>(type: "text", nullable: true),
                    opened_at = table.Column<long>(type: "bigint", nullable: false),
                    seen_at = table.Column<long>(type: "bigint", nullable: false),
                    ends_at = table.Column<long>(type: "bigint", nullable: false),
                    ended_at = table.Column<long>(type: "bigint", nullable: true),
                    hint = table.Column<byte[]>(type: "bytea", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sessions", x => x.id);
                    table.ForeignKey(
                        name: "FK_sessions_access_keys_key_id",
                        column: x => x.key_id,
                        principalTable: "access_keys",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "kept_forms",
                columns: table => new
                {
                    session = table.Column<string>(type: "text", nullable: false),
                    page = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    fields = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_kept_forms", x => new { x.session, x.page });
                    table.ForeignKey(
                        name: "FK_kept_forms_sessions_session",
                        column: x => x.session,
                        principalTable: "sessions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_sessions_caller",
                table: "sessions",
                column: "caller");

            migrationBuilder.CreateIndex(
                name: "IX_sessions_key_id",
                table: "sessions",
                column: "key_id");

            migrationBuilder.CreateIndex(
                name: "IX_sessions_secret_hash",
                table: "sessions",
                column: "secret_hash",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "kept_forms");

            migrationBuilder.DropTable(
                name: "protection_keys");

            migrationBuilder.DropTable(
                name: "sessions");
        }
    }
}
