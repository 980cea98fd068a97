using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.Sqlite
{
    /// <inheritdoc />
    internal partial class Notices : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "failed_a",
                table: "reports",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "failed_b",
                table: "reports",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "failed_c",
                table: "reports",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "subscriptions",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    channel = table.Column<string>(type: "TEXT", nullable: false),
                    target = table.Column<string>(type: "TEXT", nullable: false),
                    secret = table.Column<string>(type: "TEXT", nullable: true),
                    events = table.Column<string>(type: "TEXT", nullable: false),
                    contract = table.Column<string>(type: "TEXT", nullable: true),
                    owner = table.Column<string>(type: "TEXT", nullable: false),
                    owner_name = table.Column<string>(type: "TEXT", nullable: false),
                    owner_role = table.Column<string>(type: "TEXT", nullable: false),
                    created_at = table.Column<long>(type: "INTEGER", nullable: false),
                    ended_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_subscriptions", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "notices",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    entry = table.Column<long>(type: "INTEGER", nullable: false),
                    subscription = table.Column<string>(type: "TEXT", nullable: false),
                    @event = table.Column<string>(name: "event", type: "TEXT", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    facts = table.Column<string>(type: "TEXT", nullable: false),
                    state = table.Column<string>(type: "TEXT", nullable: false),
                    attempt = table.Column<long>(type: "INTEGER", nullable: false),
                    failures = table.Column<int>(type: "INTEGER", nullable: false),
                    due_at = table.Column<long>(type: "INTEGER", nullable: false),
                    reason = table.Column<string>(type: "TEXT", nullable: true),
                    done_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_notices", x => x.id);
                    table.ForeignKey(
                        name: "FK_notices_history_entry",
                        column: x => x.entry,
                        principalTable: "history",
                        principalColumn: "entry",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_notices_subscriptions_subscription",
                        column: x => x.subscription,
                        principalTable: "subscriptions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_notices_due_at_entry",
                table: "notices",
                columns: new[] { "due_at", "entry" },
                filter: "\"state\" IN ('Waiting', 'Sending')");

            migrationBuilder.CreateIndex(
                name: "IX_notices_entry_subscription",
                table: "notices",
                columns: new[] { "entry", "subscription" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_notices_subscription",
                table: "notices",
                column: "subscription");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "notices");

            migrationBuilder.DropTable(
                name: "subscriptions");

            migrationBuilder.DropColumn(
                name: "failed_a",
                table: "reports");

            migrationBuilder.DropColumn(
                name: "failed_b",
                table: "reports");

            migrationBuilder.DropColumn(
                name: "failed_c",
                table: "reports");
        }
    }
}
