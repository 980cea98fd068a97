using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.Sqlite
{
    /// <inheritdoc />
    internal partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "access_keys",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    prefix = table.Column<string>(type: "TEXT", nullable: false),
                    secret_hash = table.Column<byte[]>(type: "BLOB", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    role = table.Column<string>(type: "TEXT", nullable: false),
                    created_at = table.Column<long>(type: "INTEGER", nullable: false),
                    expires_at = table.Column<long>(type: "INTEGER", nullable: true),
                    revoked_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_access_keys", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "idempotency",
                columns: table => new
                {
                    caller = table.Column<string>(type: "TEXT", nullable: false),
                    key = table.Column<string>(type: "TEXT", nullable: false),
                    content_hash = table.Column<string>(type: "TEXT", nullable: false),
                    submission_id = table.Column<string>(type: "TEXT", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_idempotency", x => new { x.caller, x.key });
                });

            migrationBuilder.CreateTable(
                name: "submissions",
                columns: table => new
                {
                    number = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    series = table.Column<string>(type: "TEXT", nullable: false),
                    revision = table.Column<int>(type: "INTEGER", nullable: false),
                    is_latest = table.Column<bool>(type: "INTEGER", nullable: false),
                    revision_of = table.Column<string>(type: "TEXT", nullable: true),
                    file_name = table.Column<string>(type: "TEXT", nullable: false),
                    text_hash = table.Column<string>(type: "TEXT", nullable: false),
                    submitter = table.Column<string>(type: "TEXT", nullable: false),
                    submitter_name = table.Column<string>(type: "TEXT", nullable: false),
                    state = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<long>(type: "INTEGER", nullable: false),
                    received_at = table.Column<long>(type: "INTEGER", nullable: false),
                    changed_at = table.Column<long>(type: "INTEGER", nullable: false),
                    plan_id = table.Column<string>(type: "TEXT", nullable: true),
                    plan_title = table.Column<string>(type: "TEXT", nullable: true),
                    plan_revision = table.Column<string>(type: "TEXT", nullable: true),
                    report_screening = table.Column<int>(type: "INTEGER", nullable: true),
                    search_text = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_submissions", x => x.number);
                });

            migrationBuilder.CreateTable(
                name: "history",
                columns: table => new
                {
                    entry = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    number = table.Column<long>(type: "INTEGER", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    @event = table.Column<string>(name: "event", type: "TEXT", nullable: false),
                    by = table.Column<string>(type: "TEXT", nullable: false),
                    by_name = table.Column<string>(type: "TEXT", nullable: false),
                    comment = table.Column<string>(type: "TEXT", nullable: true),
                    report_hash = table.Column<string>(type: "TEXT", nullable: true),
                    screening = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_history", x => x.entry);
                    table.ForeignKey(
                        name: "FK_history_submissions_number",
                        column: x => x.number,
                        principalTable: "submissions",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "jobs",
                columns: table => new
                {
                    number = table.Column<long>(type: "INTEGER", nullable: false),
                    screening = table.Column<int>(type: "INTEGER", nullable: false),
                    state = table.Column<string>(type: "TEXT", nullable: false),
                    attempt = table.Column<long>(type: "INTEGER", nullable: false),
                    failures = table.Column<int>(type: "INTEGER", nullable: false),
                    due_at = table.Column<long>(type: "INTEGER", nullable: false),
                    worker = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_jobs", x => new { x.number, x.screening });
                    table.ForeignKey(
                        name: "FK_jobs_submissions_number",
                        column: x => x.number,
                        principalTable: "submissions",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "reports",
                columns: table => new
                {
                    number = table.Column<long>(type: "INTEGER", nullable: false),
                    screening = table.Column<int>(type: "INTEGER", nullable: false),
                    attempt = table.Column<long>(type: "INTEGER", nullable: false),
                    json = table.Column<byte[]>(type: "BLOB", nullable: false),
                    hash = table.Column<string>(type: "TEXT", nullable: false),
                    book_hash = table.Column<string>(type: "TEXT", nullable: false),
                    program_version = table.Column<string>(type: "TEXT", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    readable = table.Column<bool>(type: "INTEGER", nullable: false),
                    failed = table.Column<int>(type: "INTEGER", nullable: false),
                    warned = table.Column<int>(type: "INTEGER", nullable: false),
                    not_assessed = table.Column<int>(type: "INTEGER", nullable: false),
                    needs_person = table.Column<int>(type: "INTEGER", nullable: false),
                    passed = table.Column<int>(type: "INTEGER", nullable: false),
                    departed = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_reports", x => new { x.number, x.screening });
                    table.ForeignKey(
                        name: "FK_reports_submissions_number",
                        column: x => x.number,
                        principalTable: "submissions",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "texts",
                columns: table => new
                {
                    number = table.Column<long>(type: "INTEGER", nullable: false),
                    text = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_texts", x => x.number);
                    table.ForeignKey(
                        name: "FK_texts_submissions_number",
                        column: x => x.number,
                        principalTable: "submissions",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_access_keys_prefix",
                table: "access_keys",
                column: "prefix",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_history_number_entry",
                table: "history",
                columns: new[] { "number", "entry" });

            migrationBuilder.CreateIndex(
                name: "IX_jobs_due_at_number",
                table: "jobs",
                columns: new[] { "due_at", "number" },
                filter: "\"state\" IN ('Queued', 'Leased')");

            migrationBuilder.CreateIndex(
                name: "IX_submissions_id",
                table: "submissions",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_submissions_series_revision",
                table: "submissions",
                columns: new[] { "series", "revision" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_submissions_state_number",
                table: "submissions",
                columns: new[] { "state", "number" });

            migrationBuilder.CreateIndex(
                name: "IX_submissions_submitter_number",
                table: "submissions",
                columns: new[] { "submitter", "number" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "access_keys");

            migrationBuilder.DropTable(
                name: "history");

            migrationBuilder.DropTable(
                name: "idempotency");

            migrationBuilder.DropTable(
                name: "jobs");

            migrationBuilder.DropTable(
                name: "reports");

            migrationBuilder.DropTable(
                name: "texts");

            migrationBuilder.DropTable(
                name: "submissions");
        }
    }
}
