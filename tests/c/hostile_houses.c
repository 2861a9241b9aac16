/*
 * Calls the functions that make plans out of other things than a document, and those beside plans, with arguments that a
 * careful program never gives: wall schedules, houses before their sheets, streets, derivations. Each must answer with a
 * status and leave its outputs as they were.
 *
 *   hostile_houses FILE      FILE is a house that can be planned
 */
#include "check.h"
#include "edgenail.h"

#include <math.h>
#include <string.h>

/* Rows of a wall schedule: NULL, sizes below zero, numbers that are none, texts that are no openings. */
static void walls(void) {
  static const uint16_t lone_surrogate[] = {0xdc00};
  static const uint16_t none[] = {0};
  static const char not_utf8[] = {'\xff'};
  edgenail_wall_schedule *schedule = NULL;
  edgenail_plan *plan = NULL;
  char text[8];
  uint16_t units[8];
  int64_t one = -7, two = -7, three = -7, four = -7, five = -7;
  double money = -7, minutes = -7;
  CHECK(edgenail_wall_sheets(144, 97.125, 16, NULL, 0, "", 0, &one) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_nails(144, 97.125, 16, "", 0, NULL, 0, &one) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_blocks(144, 97.125, 16, "", 0, "", 0, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_sheets(144, 97.125, 16, "", -1, "", 0, &one) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_wall_sheets(144, 97.125, 16, not_utf8, 1, "", 0, &one) == EDGENAIL_STATUS_NOT_UTF8);
  CHECK(edgenail_wall_sheets(NAN, 97.125, 16, "", 0, "", 0, &one) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_wall_sheets(144, INFINITY, 16, "", 0, "", 0, &one) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_wall_sheets(144, 97.125, -1e308, "", 0, "", 0, &one) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_wall_sheets(144, 97.125, 16, "1,2,3", 5, "", 0, &one) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_wall_sheets(144, 97.125, 16, "", 0, "sideways", 8, &one) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_wall_sheets_utf16(144, 97.125, 16, lone_surrogate, 1, none, 0, &one) == EDGENAIL_STATUS_NOT_UTF16);
  CHECK(edgenail_wall_nails_utf16(144, 97.125, 16, none, 0, lone_surrogate, 1, &one) == EDGENAIL_STATUS_NOT_UTF16);
  CHECK(edgenail_wall_blocks_utf16(144, 97.125, 16, NULL, 0, none, 0, &one) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_figures(144, 97.125, 16, "", 0, "", 0, &one, &two, &three, &money, &minutes, &four, NULL) ==
        EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_figures(-1, 97.125, 16, "", 0, "", 0, &one, &two, &three, &money, &minutes, &four, &five) ==
        EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_wall_figures_utf16(-1, 97.125, 16, none, 0, none, 0, &one, &two, &three, &money, &minutes, &four,
                                    &five) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_wall_schedule_new(NULL, 3, 0, 0, 0, 0, 0, 0, &schedule) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_schedule_new("job", 3, 0, 0, 0, 0, 0, 0, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_schedule_new("job", 3, 1999, 1, 1, 1, 0, 0, &schedule) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_wall_schedule_new("job", 3, 2015, 3, 1, 1, 0, 0, &schedule) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_wall_schedule_new("job", 3, 2015, 1, 0, 1, 0, 0, &schedule) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_wall_schedule_new("job", 3, 2015, 1, 1, -1, 0, 0, &schedule) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_wall_schedule_new("job", 3, 2015, 1, 1, 1, 2, 0, &schedule) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_wall_schedule_new_utf16(lone_surrogate, 1, 0, 0, 0, 0, 0, 0, &schedule) == EDGENAIL_STATUS_NOT_UTF16);
  CHECK(schedule == NULL);
  CHECK(edgenail_wall_schedule_new("job", 3, 2015, 1, 1, 1, 0, 0, &schedule) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_wall_schedule_add(NULL, "w", 1, 144, 97.125, 16, "", 0, "", 0, "", 0, 0, 0) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_schedule_add(schedule, "w", 1, 144, 97.125, 16, "", 0, "", 0, NULL, 0, 0, 0) ==
        EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_schedule_add(schedule, "w", 1, 144, 97.125, 16, "", 0, "", 0, "", 0, NAN, 0) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_wall_schedule_add_utf16(schedule, none, 1, 144, 97.125, 16, none, 0, none, 0, none, -2, 0, 0) ==
        EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_wall_schedule_plan(schedule, &plan) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_wall_schedule_plan(schedule, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_schedule_plan(NULL, &plan) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_schedule_count(NULL, &one) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_schedule_count(schedule, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_schedule_json(NULL, text, 8, &one) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_schedule_json_utf16(NULL, units, 8, &one) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(one == -7 && two == -7 && three == -7 && four == -7 && five == -7);
  CHECK(money == -7 && minutes == -7 && plan == NULL);
  CHECK(edgenail_wall_schedule_count(schedule, &one) == EDGENAIL_STATUS_OK && one == 0);
  CHECK(edgenail_wall_schedule_json(schedule, text, 8, &one) == EDGENAIL_STATUS_BUFFER_TOO_SMALL && one > 8);
  CHECK(edgenail_wall_schedule_json_utf16(schedule, units, 8, &two) == EDGENAIL_STATUS_BUFFER_TOO_SMALL && two == one);
  edgenail_wall_schedule_free(schedule);
  edgenail_wall_schedule_free(NULL);
}

/* Derivations: NULL, unknown forms and rows; then one that is read. */
static void derivations(void) {
  static const uint16_t braces[] = {'{', '}'};
  static const char asked[] = "{\"kind\":\"hold_down\",\"shear\":250,\"length\":\"4 ft\",\"height\":\"8 ft\",\"inset\":0}";
  char text[4096];
  uint16_t units[8];
  int64_t needed = -7;
  CHECK(edgenail_capacity_derivation(NULL, 2, 1, text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_capacity_derivation(asked, sizeof asked - 1, 0, text, 8, &needed) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_capacity_derivation(asked, sizeof asked - 1, 4, text, 8, &needed) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_capacity_derivation("{}", 2, 1, text, 8, &needed) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_capacity_derivation_utf16(braces, 2, 1, units, 8, &needed) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_plan_derivation(NULL, 0, 1, text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_derivation_utf16(NULL, 0, 1, units, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(needed == -7);
  CHECK(edgenail_capacity_derivation(asked, sizeof asked - 1, EDGENAIL_FORM_TEXT, text, sizeof text - 1, &needed) ==
        EDGENAIL_STATUS_OK);
  text[needed] = 0;
  CHECK(strstr(text, " = 500 lb") != NULL || strstr(text, " = 2000 lb") != NULL);
  CHECK(strstr(text, "source: ") != NULL);
}

/* Houses before their sheets: NULL, faults; then read, framed and planned, which is the plan at once. */
static void houses(const char *text, int64_t size) {
  static const uint16_t lone_surrogate[] = {0xd800};
  edgenail_house *house = NULL;
  edgenail_plan *plan = NULL;
  edgenail_plan *at_once = NULL;
  char few[8];
  uint16_t units[8];
  int64_t needed = -7, other = -7;
  char *one, *two;
  CHECK(edgenail_house_new_json(NULL, 2, &house) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_house_new_json("{}", 2, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_house_new_json("{}", 2, &house) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_house_new_json_utf16(lone_surrogate, 1, &house) == EDGENAIL_STATUS_NOT_UTF16);
  CHECK(edgenail_house_json(NULL, few, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_house_json_utf16(NULL, units, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_house_members_csv(NULL, few, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_house_plan(NULL, &plan) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(house == NULL && plan == NULL && needed == -7);
  CHECK(edgenail_house_new_json(text, size, &house) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_house_plan(house, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_house_json(house, few, 8, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL && needed > 500);
  CHECK(edgenail_house_json_utf16(house, units, 8, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL && needed > 500);
  CHECK(edgenail_house_members_csv(house, few, 8, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL && needed > 500);
  CHECK(edgenail_house_plan(house, &plan) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_plan_new_json(text, size, &at_once) == EDGENAIL_STATUS_OK);
  edgenail_house_free(house);
  edgenail_house_free(NULL);
  CHECK(edgenail_plan_json(plan, NULL, 0, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(edgenail_plan_json(at_once, NULL, 0, &other) == EDGENAIL_STATUS_BUFFER_TOO_SMALL && other == needed);
  one = malloc((size_t)needed);
  two = malloc((size_t)needed);
  if (one == NULL || two == NULL) {
    exit(2);
  }
  CHECK(edgenail_plan_json(plan, one, needed, &needed) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_plan_json(at_once, two, needed, &needed) == EDGENAIL_STATUS_OK);
  CHECK(memcmp(one, two, (size_t)needed) == 0);
  free(one);
  free(two);
  edgenail_plan_free(plan);
  edgenail_plan_free(at_once);
}

/* Streets: NULL, no plans, a plan twice. */
static void streets(const edgenail_plan *plan) {
  const edgenail_plan *houses[2];
  edgenail_street *street = NULL;
  char text[8];
  uint16_t units[8];
  int64_t needed = -7, wide = -7;
  houses[0] = plan;
  houses[1] = NULL;
  CHECK(edgenail_street_new(NULL, 1, 1000, &street) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_street_new(houses, 2, 1000, &street) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_street_new(houses, 1, 1000, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_street_new(houses, -1, 1000, &street) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_street_new(houses, 1, -1, &street) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_street_json(NULL, text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_street_json_utf16(NULL, units, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_street_csv(NULL, text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(street == NULL && needed == -7);
  houses[1] = plan;
  CHECK(edgenail_street_new(houses, 2, 1000, &street) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_street_json(street, text, 8, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL && needed > 100);
  CHECK(edgenail_street_json_utf16(street, units, 8, &wide) == EDGENAIL_STATUS_BUFFER_TOO_SMALL && wide > 100);
  CHECK(edgenail_street_csv(street, text, 8, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL && needed > 40);
  edgenail_street_free(street);
  edgenail_street_free(NULL);
}

int main(int argc, char **argv) {
  edgenail_plan *plan = NULL;
  long size = 0;
  char *text;
  if (argc != 2) {
    fprintf(stderr, "usage: hostile_houses FILE\n");
    return 2;
  }
  text = read_file(argv[1], &size);
  walls();
  derivations();
  houses(text, size);
  CHECK(edgenail_plan_new_json(text, size, &plan) == EDGENAIL_STATUS_OK);
  streets(plan);
  edgenail_plan_free(plan);
  free(text);
  return failures == 0 ? 0 : 1;
}
