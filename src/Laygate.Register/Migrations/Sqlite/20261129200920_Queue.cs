using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laygate.Register.Migrations.Sqlite
{
    /// <inheritdoc />
    internal partial class Queue : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "assignee",
                table: "submissions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "assignee_name",
                table: "submissions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "contract",
                table: "submissions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "shift_date",
                table: "submissions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "stage",
                table: "submissions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "worst",
                table: "submissions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "worst_rank",
                table: "submissions",
                type: "INTEGER",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "assignee",
                table: "submissions");

            migrationBuilder.DropColumn(
                name: "assignee_name",
                table: "submissions");

            migrationBuilder.DropColumn(
                name: "contract",
                table: "submissions");

            migrationBuilder.DropColumn(
                name: "shift_date",
                table: "submissions");

            migrationBuilder.DropColumn(
                name: "stage",
                table: "submissions");

            migrationBuilder.DropColumn(
                name: "worst",
                table: "submissions");

            migrationBuilder.DropColumn(
                name: "worst_rank",
                table: "submissions");
        }
    }
}
