/*
 * Calls every function with arguments that a careful program never gives: NULL everywhere, sizes below zero, no
 * room, text that is neither UTF-8 nor UTF-16, names that do not exist. Each must answer with a status and leave
 * its outputs as they were.
 *
 *   hostile FILE      FILE is a house that can be planned
 */
#include "check.h"
#include "edgenail.h"

#include <math.h>
#include <string.h>

static const char MISSING[] = "no such name";

static void bad_texts(void) {
  static const char not_utf8[] = {'{', '\xff', '}'};
  static const uint16_t lone_surrogate[] = {'{', 0xd800, '}'};
  edgenail_plan *plan = NULL;
  CHECK(edgenail_plan_new_json(NULL, 2, &plan) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_new_json("{}", 2, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_new_json("{}", -1, &plan) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_plan_new_json("{}", INT64_MIN, &plan) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_plan_new_json(not_utf8, sizeof not_utf8, &plan) == EDGENAIL_STATUS_NOT_UTF8);
  CHECK(edgenail_plan_new_json("", 0, &plan) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_plan_new_json_utf16(NULL, 2, &plan) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_new_json_utf16(lone_surrogate, 3, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_new_json_utf16(lone_surrogate, -3, &plan) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_plan_new_json_utf16(lone_surrogate, INT64_MAX, &plan) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_plan_new_json_utf16(lone_surrogate, 3, &plan) == EDGENAIL_STATUS_NOT_UTF16);
  CHECK(plan == NULL);
}

/* What if: NULL, sizes below zero, faults of the house and of the changes. */
static void what_if(void) {
  static const uint16_t braces[] = {'{', '}'};
  char text[8];
  uint16_t units[8];
  int64_t needed = -7;
  CHECK(edgenail_what_if_json(NULL, 2, "[]", 2, text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_what_if_json("{}", 2, NULL, 2, text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_what_if_json("{}", 2, "[]", -1, text, 8, &needed) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_what_if_json("{}", 2, "[]", 2, text, 8, &needed) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_what_if_json_utf16(NULL, 2, braces, 2, units, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_what_if_json_utf16(braces, 2, braces, 2, units, 8, &needed) == EDGENAIL_STATUS_INPUT);
  CHECK(needed == -7);
}

/* Questions of capacity: NULL, sizes below zero, numbers that are none; then answers, own arithmetic. */
static void capacity(void) {
  static const uint16_t braces[] = {'{', '}'};
  static const char ends[] = "{\"kind\":\"hold_down\",\"shear\":250,\"length\":\"4 ft\",\"height\":\"8 ft\",\"inset\":0}";
  char text[8];
  uint16_t units[8];
  int64_t needed = -7;
  double one = -7;
  double two = -7;
  double three = -7;
  CHECK(edgenail_capacity_json(NULL, 2, text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_capacity_json("{}", -1, text, 8, &needed) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_capacity_json("{}", 2, text, 8, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_capacity_json("{}", 2, text, 8, &needed) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_capacity_json_utf16(NULL, 2, units, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_capacity_json_utf16(braces, 2, units, 8, &needed) == EDGENAIL_STATUS_INPUT);
  CHECK(needed == -7);
  CHECK(edgenail_capacity_json(EDGENAIL_TEXT("{\"kind\":\"cell\"}"), text, 8, &needed) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_error_count() == 2);
  CHECK(edgenail_capacity_json(ends, sizeof ends - 1, text, 8, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(needed > 8);
  CHECK(edgenail_capacity_number(ends, sizeof ends - 1, EDGENAIL_TEXT("/chord_lb"), NULL) ==
        EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_capacity_number(ends, sizeof ends - 1, NULL, 3, &one) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_capacity_number(ends, sizeof ends - 1, EDGENAIL_TEXT("/kind"), &one) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(one == -7);
  CHECK(edgenail_capacity_number(ends, sizeof ends - 1, EDGENAIL_TEXT("/chord_lb"), &one) == EDGENAIL_STATUS_OK);
  CHECK(one == 2000);
  CHECK(edgenail_hold_down(250, 4, 8, 0, 0, &one) == EDGENAIL_STATUS_OK);
  CHECK(one == 2000);
  CHECK(edgenail_hold_down(250, 4, 8, 0, 4, &two) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_hold_down(NAN, 4, 8, 0, 0, &two) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_hold_down(250, INFINITY, 8, -1, 0, &two) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_error_count() == 2);
  CHECK(edgenail_hold_down(250, 4, 8, 0, 0, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(two == -7);
  CHECK(edgenail_drift(250, 8, 4, 1.6e6, 10.5, 0.1, 15, 1, &one) == EDGENAIL_STATUS_OK);
  CHECK(fabs(one - 0.3486) < 0.0001);
  CHECK(edgenail_drift(250, 8, 4, 1.6e6, 10.5, 0.1, 15, 0, &two) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_drift(250, 8, 4, 1.6e6, 10.5, 0.1, 15, 2, &two) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_drift(250, 8, 4, 1.6e6, NAN, 0.1, 15, 1, &two) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_drift(250, 8, 4, 1.6e6, 10.5, 0.1, 15, 1, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_unit_shear(2015, EDGENAIL_LOAD_SEISMIC, EDGENAIL_METHOD_ASD, EDGENAIL_GRADE_SHEATHING,
                            EDGENAIL_PANEL_MATERIAL_OSB, 0.4375, 0.131, 0.281, 2.5, EDGENAIL_COATING_BRIGHT, 6, 6, 24, 1, 0,
                            0.5, 1.5, 0, 0, 0, &one, &two, &three) == EDGENAIL_STATUS_OK);
  CHECK(one == 480 && two == 240 && three == 15);
  CHECK(edgenail_unit_shear(2015, 3, 1, 1, 1, 0.4375, 0.131, 0.281, 2.5, 1, 6, 6, 24, 1, 0, 0.5, 1.5, 0, 0, 0, &one, &two,
                            &three) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_unit_shear(1997, 1, 1, 1, 1, NAN, 0.131, 0.281, 2.5, 1, 6, 6, 24, 1, 0, 0.5, 1.5, 0, 0, 0, &one, &two,
                            &three) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_error_count() == 2);
  CHECK(edgenail_unit_shear(2015, 1, 1, 1, 1, 0.4375, 0.131, 0.281, 2.5, 1, 6, 6, 24, 1, 0, 0.5, 1.5, 0, 0, 0, &one, NULL,
                            &three) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(one == 480 && two == 240 && three == 15);
}

/* Words in place of numbers, and back. */
static void choices(void) {
  static const uint16_t load[] = {'l', 'o', 'a', 'd'};
  static const uint16_t lone[] = {0xD800};
  char text[16];
  int32_t number = -7;
  int64_t needed = -7;
  CHECK(edgenail_choice_number(EDGENAIL_TEXT("grade"), EDGENAIL_TEXT(" Structural I "), &number) == EDGENAIL_STATUS_OK);
  CHECK(number == EDGENAIL_GRADE_STRUCTURAL_I);
  number = -7;
  CHECK(edgenail_choice_number(EDGENAIL_TEXT("weather"), EDGENAIL_TEXT("wind"), &number) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_choice_number(EDGENAIL_TEXT("load"), EDGENAIL_TEXT("snow"), &number) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_choice_number(EDGENAIL_TEXT("load"), EDGENAIL_TEXT(""), &number) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_choice_number(NULL, 4, EDGENAIL_TEXT("wind"), &number) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_choice_number(EDGENAIL_TEXT("load"), "wind", -1, &number) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_choice_number(EDGENAIL_TEXT("load"), EDGENAIL_TEXT("\xff"), &number) == EDGENAIL_STATUS_NOT_UTF8);
  CHECK(edgenail_choice_number(EDGENAIL_TEXT("load"), EDGENAIL_TEXT("wind"), NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_choice_number_utf16(load, 4, lone, 1, &number) == EDGENAIL_STATUS_NOT_UTF16);
  CHECK(number == -7);
  CHECK(edgenail_choice_word(EDGENAIL_TEXT("load"), 2, text, 3, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(needed == 7);
  CHECK(edgenail_choice_word(EDGENAIL_TEXT("load"), 0, text, 16, &needed) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_choice_word(EDGENAIL_TEXT("load"), 3, text, 16, &needed) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_choice_word(EDGENAIL_TEXT("load"), INT32_MIN, text, 16, &needed) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_choice_word(EDGENAIL_TEXT("load"), 1, text, 16, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_choice_word_utf16(NULL, 4, 1, NULL, 0, &needed) == EDGENAIL_STATUS_NULL_POINTER);
}

/* Cells about nails, panels, anchors and lines. */
static void cells(void) {
  char face[1024];
  int64_t needed = -7;
  double one = -7;
  double two = -7;
  double three = -7;
  CHECK(edgenail_nail(2005, 0.131, 2.5, 0.281, 0, 0.4375, 0.5, 0, 0.5, 0, 1.6, 2, &one, &two, &three) ==
        EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_nail(1997, NAN, 2.5, 0.281, 0, 0.4375, 0.5, 0, 0.5, 0, 1.6, 1, &one, &two, &three) ==
        EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_error_count() == 2);
  CHECK(edgenail_nail(2005, 0.131, 2.5, 0.281, 0, 0.4375, 0.5, 0, 0.5, 0, 1.6, 1, &one, NULL, &three) ==
        EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_panel_pressure(24, 16, 5, 1, 16, 3, 240, 20, 1.6, 1, &one, &two, &three) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_panel_pressure(23, 16, 4, 1, 16, 9, 240, -20, 1.6, 1, &one, &two, &three) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_error_count() == 3);
  CHECK(edgenail_anchorage(250, 14, 1000, 250, 0, 0, 0, &one, &two, &three) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_anchorage(250, 14, 1000, 0, 0, 480, 0, &one, &two, &three) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_anchorage(250, INFINITY, 1000, 0, 0, 0, 0, &one, &two, &three) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_drift_four_terms(250, 8, 8, 1.6e6, 10.5, 0.1, 7, 1, 1, 0.4375, 6, 1, &one) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_drift_four_terms(250, 8, 8, 1.6e6, 10.5, 0.1, 8, 9, 1, 0.4375, 6, 1, &one) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_construction(2015, 2, 1, 1, 1, 0.4375, 0.131, 0.281, 2.5, 9, 6, 6, 24, 1, 0, 0.5, 1.5, 0, 0, 0, face,
                              sizeof face, &needed) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(needed == -7);
  CHECK(edgenail_construction(2015, 2, 1, 1, 1, 0.4375, 0.131, 0.281, 2.5, 1, 6, 6, 24, 1, 0, 0.5, 1.5, 0, 0, 0, face, 7,
                              &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(edgenail_construction(2015, 2, 1, 1, 1, 0.4375, 0.131, 0.281, 2.5, 1, 6, 6, 24, 1, 0, 0.5, 1.5, 0, 0, 0, face,
                              sizeof face, &needed) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_wall_line(EDGENAIL_TEXT("{}}"), 1, 1, EDGENAIL_TEXT("8'"), EDGENAIL_TEXT("8'"), EDGENAIL_TEXT(""), 100, 0,
                           EDGENAIL_TEXT("4"), &one, &two, &three) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_wall_line(face, needed, 3, 1, EDGENAIL_TEXT("8'"), EDGENAIL_TEXT("8'"), EDGENAIL_TEXT(""), 100, 0,
                           EDGENAIL_TEXT("4"), &one, &two, &three) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_wall_line(face, needed, 1, 1, EDGENAIL_TEXT("8\""), EDGENAIL_TEXT("8\\\1"), EDGENAIL_TEXT(""), NAN, 0,
                           EDGENAIL_TEXT("4"), &one, &two, &three) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_error_count() == 2);
  CHECK(edgenail_wall_line(face, needed, 1, 1, EDGENAIL_TEXT("8'"), EDGENAIL_TEXT("8'"), EDGENAIL_TEXT("1,2"), 100, 0,
                           EDGENAIL_TEXT("4"), &one, &two, &three) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_error_count() == 1);
  CHECK(edgenail_wall_line(face, needed, 1, 1, EDGENAIL_TEXT("8'"), EDGENAIL_TEXT("8'"), NULL, 0, 100, 0, EDGENAIL_TEXT("4"),
                           &one, &two, &three) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_wall_line(face, needed, 1, 1, EDGENAIL_TEXT("8'"), EDGENAIL_TEXT("8'"), EDGENAIL_TEXT(""), 100, 0,
                           EDGENAIL_TEXT("4"), &one, &two, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(one == -7 && two == -7 && three == -7);
  CHECK(edgenail_wall_line(face, needed, 1, 1, EDGENAIL_TEXT("8'"), EDGENAIL_TEXT("8'"), EDGENAIL_TEXT(" ; "), 960, 0,
                           EDGENAIL_TEXT("0"), &one, &two, &three) == EDGENAIL_STATUS_OK);
  /* Own arithmetic: 240 plf on 8 ft; 120 plf times 8 ft at the ends. */
  CHECK(one == 1920 && two == 0.5 && three == 960);
}

static void error_list(void) {
  edgenail_plan *plan = NULL;
  char text[256];
  uint16_t units[256];
  int64_t needed = -7;
  int64_t needed_units = -7;
  CHECK(edgenail_plan_new_json(EDGENAIL_TEXT("{"), &plan) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_error_count() == 1);
  CHECK(edgenail_error_text(1, EDGENAIL_ERROR_FIELD_CODE, text, sizeof text, &needed) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_error_text(-1, EDGENAIL_ERROR_FIELD_CODE, text, sizeof text, &needed) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_error_text(0, 77, text, sizeof text, &needed) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_error_text(0, -1, text, sizeof text, &needed) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_error_text(0, 0, NULL, 4, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_error_text(0, 0, text, sizeof text, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_error_text(0, 0, text, -1, &needed) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(needed == -7);
  CHECK(edgenail_error_text(0, 0, NULL, 0, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(needed == 6);
  text[5] = '#';
  CHECK(edgenail_error_text(0, 0, text, 5, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(text[5] == '#');
  CHECK(edgenail_error_text(0, 0, text, 6, &needed) == EDGENAIL_STATUS_OK);
  CHECK(memcmp(text, "syntax", 6) == 0);
  CHECK(edgenail_error_text_utf16(0, 0, units, 256, &needed_units) == EDGENAIL_STATUS_OK);
  CHECK(needed_units == 6 && units[0] == 's' && units[5] == 'x');
  CHECK(edgenail_error_text_utf16(0, 0, NULL, 6, &needed_units) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_error_text_utf16(0, 99, units, 256, &needed_units) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_error_json(NULL, 0, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_error_json(NULL, 0, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  /* Reading the list, rightly or wrongly, leaves it as it is. */
  CHECK(edgenail_error_count() == 1);
  CHECK(edgenail_version(text, sizeof text, &needed) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_error_count() == 0);
  CHECK(edgenail_version(text, 0, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(edgenail_version(text, 1, NULL) == EDGENAIL_STATUS_NULL_POINTER);
}

/* A house of which no sheet is on hand: the rule, then the demand with what was tried in its place. */
static void impossible(void) {
  static const char house[] =
      "{\"walls\": [{\"name\": \"w\", \"length\": \"8 ft\"}], \"stock\": {\"sheets\": [{\"name\": \"4x8\", "
      "\"width\": \"48\", \"length\": \"96\", \"category\": \"7/16\", \"price\": 16, \"on_hand\": 0}]}}";
  static const char *const said[] = {"unmet_demand", "/stock/sheets/0/on_hand", "w", "0", "null"};
  edgenail_plan *plan = NULL;
  char text[256];
  int64_t needed = 0;
  int32_t field;
  CHECK(edgenail_plan_new_json(house, sizeof house - 1, &plan) == EDGENAIL_STATUS_NO_LAYOUT);
  CHECK(plan == NULL);
  CHECK(edgenail_error_count() == 2);
  CHECK(edgenail_error_text(0, EDGENAIL_ERROR_FIELD_CODE, text, sizeof text, &needed) == EDGENAIL_STATUS_OK);
  CHECK(needed == 9 && memcmp(text, "no_layout", 9) == 0);
  for (field = 0; field < 5; ++field) {
    CHECK(edgenail_error_text(1, field, text, sizeof text, &needed) == EDGENAIL_STATUS_OK);
    CHECK(needed == (int64_t)strlen(said[field]) && memcmp(text, said[field], strlen(said[field])) == 0);
  }
  CHECK(edgenail_error_text(1, EDGENAIL_ERROR_FIELD_MESSAGE, text, sizeof text, &needed) == EDGENAIL_STATUS_OK);
  CHECK(needed > 0);
}

static void no_plan(void) {
  char text[8];
  uint16_t units[8];
  int64_t values[8];
  double numbers[8];
  int64_t needed = 0;
  int64_t count = 0;
  int32_t kind = 0;
  CHECK(edgenail_plan_json(NULL, text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_json_utf16(NULL, units, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_wall_svg(NULL, EDGENAIL_TEXT("a"), text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_frame_svg(NULL, EDGENAIL_TEXT("a"), text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_why(NULL, EDGENAIL_TEXT("a"), text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_why_utf16(NULL, units, 0, units, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_cut_sheet_pages(NULL, &count) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_cut_sheets_svg(NULL, 0, text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_table_count(NULL, &count) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_table_name(NULL, 0, text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_table_size(NULL, EDGENAIL_TEXT("a"), &count, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_column(NULL, EDGENAIL_TEXT("a"), 0, &kind, text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_column_int64(NULL, EDGENAIL_TEXT("a"), EDGENAIL_TEXT("b"), values, 8, &needed) ==
        EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_column_double(NULL, EDGENAIL_TEXT("a"), EDGENAIL_TEXT("b"), numbers, 8, &needed) ==
        EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_text(NULL, EDGENAIL_TEXT("a"), EDGENAIL_TEXT("b"), 0, text, 8, &needed) ==
        EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_text_utf16(NULL, EDGENAIL_TEXT("a"), EDGENAIL_TEXT("b"), 0, units, 8, &needed) ==
        EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_csv(NULL, EDGENAIL_TEXT("a"), text, 8, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  edgenail_plan_free(NULL);
}

/* Every table and column of a plan, then names and rows that are not there. */
/* The unit of a column: NULL, unknown names; then lengths, money, counts. */
static void column_units(const edgenail_plan *plan) {
  char text[64];
  int64_t needed = -7;
  CHECK(edgenail_plan_column_unit(NULL, EDGENAIL_TEXT("walls"), EDGENAIL_TEXT("x0"), text, 64, &needed) ==
        EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_column_unit(plan, EDGENAIL_TEXT("walls"), EDGENAIL_TEXT("no"), text, 64, &needed) ==
        EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_plan_column_unit(plan, EDGENAIL_TEXT("walls"), NULL, 2, text, 64, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(needed == -7);
  CHECK(edgenail_plan_column_unit(plan, EDGENAIL_TEXT("walls"), EDGENAIL_TEXT("x0"), text, 64, &needed) ==
        EDGENAIL_STATUS_OK);
  CHECK(needed == 11 && memcmp(text, "1/40640 in.", 11) == 0);
  CHECK(edgenail_plan_column_unit(plan, EDGENAIL_TEXT("walls"), EDGENAIL_TEXT("nails"), text, 64, &needed) ==
        EDGENAIL_STATUS_OK);
  CHECK(needed == 0);
}

static void tables(const edgenail_plan *plan) {
  char name[64];
  char column[64];
  int64_t count = 0;
  int64_t name_size = 0;
  int64_t column_size = 0;
  int64_t rows = 0;
  int64_t columns = 0;
  int64_t needed = 0;
  int64_t index;
  int64_t position;
  int32_t kind = 0;
  CHECK(edgenail_plan_table_count(plan, &count) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_plan_table_count(plan, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_table_name(plan, count, name, sizeof name, &name_size) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_plan_table_name(plan, -1, name, sizeof name, &name_size) == EDGENAIL_STATUS_BAD_LENGTH);
  for (index = 0; index < count; index++) {
    CHECK(edgenail_plan_table_name(plan, index, name, sizeof name, &name_size) == EDGENAIL_STATUS_OK);
    CHECK(edgenail_plan_table_size(plan, name, name_size, &rows, &columns) == EDGENAIL_STATUS_OK);
    CHECK(edgenail_plan_table_size(plan, name, name_size, NULL, &columns) == EDGENAIL_STATUS_NULL_POINTER);
    CHECK(edgenail_plan_table_size(plan, name, name_size, &rows, NULL) == EDGENAIL_STATUS_NULL_POINTER);
    CHECK(edgenail_plan_column(plan, name, name_size, columns, &kind, column, sizeof column, &column_size) ==
          EDGENAIL_STATUS_NOT_FOUND);
    for (position = 0; position < columns; position++) {
      int64_t *values = calloc((size_t)rows + 1, sizeof *values);
      double *numbers = calloc((size_t)rows + 1, sizeof *numbers);
      int32_t status;
      if (values == NULL || numbers == NULL) {
        exit(2);
      }
      CHECK(edgenail_plan_column(plan, name, name_size, position, NULL, column, sizeof column, &column_size) ==
            EDGENAIL_STATUS_NULL_POINTER);
      CHECK(edgenail_plan_column(plan, name, name_size, position, &kind, column, sizeof column, &column_size) ==
            EDGENAIL_STATUS_OK);
      status = edgenail_plan_column_int64(plan, name, name_size, column, column_size, values, rows, &needed);
      CHECK(status == (kind == EDGENAIL_KIND_INT64 ? EDGENAIL_STATUS_OK : EDGENAIL_STATUS_WRONG_KIND));
      status = edgenail_plan_column_double(plan, name, name_size, column, column_size, numbers, rows, &needed);
      CHECK(status == (kind == EDGENAIL_KIND_TEXT ? EDGENAIL_STATUS_WRONG_KIND : EDGENAIL_STATUS_OK));
      if (kind != EDGENAIL_KIND_TEXT) {
        CHECK(needed == rows);
        if (kind == EDGENAIL_KIND_INT64 && rows > 0) {
          CHECK(numbers[rows - 1] == (double)values[rows - 1]);
        }
      }
      CHECK(edgenail_plan_text(plan, name, name_size, column, column_size, rows, NULL, 0, &needed) ==
            EDGENAIL_STATUS_NOT_FOUND);
      CHECK(edgenail_plan_text(plan, name, name_size, column, column_size, -1, NULL, 0, &needed) ==
            EDGENAIL_STATUS_BAD_LENGTH);
      free(values);
      free(numbers);
    }
    CHECK(edgenail_plan_column_int64(plan, name, name_size, EDGENAIL_TEXT("no such name"), NULL, 0, &needed) ==
          EDGENAIL_STATUS_NOT_FOUND);
    CHECK(edgenail_plan_column_int64(plan, name, name_size, NULL, 0, NULL, 0, &needed) ==
          EDGENAIL_STATUS_NULL_POINTER);
  }
  CHECK(edgenail_plan_csv(plan, MISSING, sizeof MISSING - 1, NULL, 0, &needed) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_plan_csv(plan, NULL, 0, NULL, 0, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_csv(plan, MISSING, -1, NULL, 0, &needed) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_plan_wall_svg(plan, MISSING, sizeof MISSING - 1, NULL, 0, &needed) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_plan_wall_svg(plan, NULL, 1, NULL, 0, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_frame_svg(plan, MISSING, sizeof MISSING - 1, NULL, 0, &needed) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_plan_frame_svg(plan, NULL, 1, NULL, 0, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_why(plan, MISSING, sizeof MISSING - 1, NULL, 0, &needed) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_plan_why(plan, NULL, 1, NULL, 0, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_why_utf16(plan, NULL, 1, NULL, 0, &needed) == EDGENAIL_STATUS_NULL_POINTER);
}

/* Every page of cut sheets is there, and none before the first or after the last. */
static void cut_sheets(const edgenail_plan *plan) {
  int64_t pages = 0;
  int64_t needed = 0;
  int64_t page;
  CHECK(edgenail_plan_cut_sheet_pages(plan, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_plan_cut_sheet_pages(plan, &pages) == EDGENAIL_STATUS_OK && pages > 0);
  for (page = 0; page < pages; page++) {
    CHECK(edgenail_plan_cut_sheets_svg(plan, page, NULL, 0, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
    CHECK(needed > 0);
  }
  CHECK(edgenail_plan_cut_sheets_svg(plan, pages, NULL, 0, &needed) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_plan_cut_sheets_svg(plan, -1, NULL, 0, &needed) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_plan_cut_sheets_svg(plan, INT64_MAX, NULL, 0, &needed) == EDGENAIL_STATUS_NOT_FOUND);
}

/* The document at exactly its size and at every way of one byte less; outputs that are not aligned. */
static void documents(const edgenail_plan *plan) {
  int64_t needed = 0;
  int64_t units_needed = 0;
  char *text;
  uint16_t *units;
  char room[sizeof(int64_t) + 1];
  CHECK(edgenail_plan_json(plan, NULL, 0, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(edgenail_plan_json(plan, NULL, needed, &needed) == EDGENAIL_STATUS_NULL_POINTER);
  text = malloc((size_t)needed);
  if (text == NULL) {
    exit(2);
  }
  CHECK(edgenail_plan_json(plan, text, needed - 1, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(edgenail_plan_json(plan, text, needed, &needed) == EDGENAIL_STATUS_OK);
  CHECK(text[0] == '{' && text[needed - 1] == '}');
  free(text);
  CHECK(edgenail_plan_json_utf16(plan, NULL, 0, &units_needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  units = malloc((size_t)units_needed * sizeof *units);
  if (units == NULL) {
    exit(2);
  }
  CHECK(edgenail_plan_json_utf16(plan, units, units_needed, &units_needed) == EDGENAIL_STATUS_OK);
  CHECK(units[0] == '{' && units[units_needed - 1] == '}');
  free(units);
  memset(room, 0, sizeof room);
  CHECK(edgenail_plan_json(plan, NULL, 0, (int64_t *)(void *)(room + 1)) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  memcpy(&units_needed, room + 1, sizeof units_needed);
  CHECK(units_needed == needed);
}

static void lengths(void) {
  static const uint16_t comma[] = {'1', ',', '5'};
  static const uint16_t lone_surrogate[] = {0xdc00};
  char text[64];
  uint16_t units_text[64];
  int64_t units = -7;
  int64_t needed = -7;
  int32_t flag = -7;
  const int32_t inch = EDGENAIL_UNIT_INCH;
  CHECK(edgenail_length_parse(NULL, 1, inch, &units, &flag) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_length_parse("1", 1, inch, NULL, &flag) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_length_parse("1", 1, inch, &units, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_length_parse("1", -1, inch, &units, &flag) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_length_parse("1", 1, 0, &units, &flag) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_length_parse("1", 1, INT32_MAX, &units, &flag) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_length_parse("\xff", 1, inch, &units, &flag) == EDGENAIL_STATUS_NOT_UTF8);
  CHECK(edgenail_length_parse("", 0, inch, &units, &flag) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_length_parse_utf16(NULL, 1, inch, &units, &flag) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_length_parse_utf16(lone_surrogate, 1, inch, &units, &flag) == EDGENAIL_STATUS_NOT_UTF16);
  CHECK(edgenail_length_parse_utf16(comma, 3, inch, &units, &flag) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_error_count() == 1);
  CHECK(edgenail_error_text(0, EDGENAIL_ERROR_FIELD_CODE, text, sizeof text, &needed) == EDGENAIL_STATUS_OK);
  CHECK(needed == 5 && memcmp(text, "comma", 5) == 0);
  CHECK(edgenail_length_from_double(NAN, inch, &units, &flag) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_length_from_double(1e300, inch, &units, &flag) == EDGENAIL_STATUS_INPUT);
  CHECK(edgenail_length_from_double(1, 99, &units, &flag) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_length_from_double(1, inch, NULL, &flag) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_length_from_double(1, inch, &units, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(units == -7 && flag == -7);
  CHECK(edgenail_length_show(1, 99, EDGENAIL_ROUNDING_DOWN, &flag, text, 64, &needed) ==
        EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_length_show(1, EDGENAIL_STYLE_MILLIMETRES, 0, &flag, text, 64, &needed) ==
        EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_length_show(1, EDGENAIL_STYLE_MILLIMETRES, EDGENAIL_ROUNDING_UP, NULL, text, 64, &needed) ==
        EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_length_show(INT64_MIN, EDGENAIL_STYLE_MILLIMETRES, EDGENAIL_ROUNDING_DOWN, &flag, text, 64,
                             &needed) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_length_show_utf16(INT64_MAX, EDGENAIL_STYLE_FEET_INCHES_SIXTEENTH, EDGENAIL_ROUNDING_UP, &flag,
                                   units_text, 64, &needed) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_length_show_utf16(1, 0, 1, &flag, units_text, 64, &needed) == EDGENAIL_STATUS_BAD_CHOICE);
  CHECK(edgenail_length_text(40640, NULL, 0, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(edgenail_length_text(40640, text, needed, &needed) == EDGENAIL_STATUS_OK);
  CHECK(memcmp(text, "1 in.", 5) == 0);
}

int main(int argc, char **argv) {
  edgenail_plan *plan = NULL;
  long size = 0;
  char *text;
  if (argc != 2) {
    fprintf(stderr, "usage: hostile FILE\n");
    return 2;
  }
  text = read_file(argv[1], &size);
  bad_texts();
  what_if();
  capacity();
  choices();
  cells();
  error_list();
  impossible();
  no_plan();
  lengths();
  CHECK(edgenail_plan_new_json(text, size, &plan) == EDGENAIL_STATUS_OK);
  free(text);
  if (plan != NULL) {
    tables(plan);
    column_units(plan);
    cut_sheets(plan);
    documents(plan);
    edgenail_plan_free(plan);
  }
  return failures == 0 ? 0 : 1;
}
