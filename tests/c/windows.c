/*
 * Takes the library as a spreadsheet on Windows does: loads the DLL while it runs, finds each function by its name, and
 * passes texts in UTF-16.
 */
#define NO_FILES
#include "check.h"
#include "edgenail.h"

#include <math.h>
#include <string.h>
#include <windows.h>

enum { ROOM = 256 };

static HMODULE library;

/* Where a function of the library is; ends the program when there is none of that name. */
static void (*address(const char *name))(void) {
  FARPROC found = GetProcAddress(library, name);
  if (found == NULL) {
    fprintf(stderr, "the DLL has no %s\n", name);
    exit(2);
  }
  return (void (*)(void))found;
}

/* A function of the library, with the type that the header gives it. */
#define FUNCTION(name) ((__typeof__(edgenail_##name) *)address("edgenail_" #name))

/* A quoted text in UTF-16, and its length. */
#define WIDE(quoted) ((const uint16_t *)L##quoted), ((int64_t)(sizeof(L##quoted) / sizeof(wchar_t)) - 1)

static const uint16_t LONE_SURROGATE[] = {'8', 0xd83d, '\''};

static void lengths(void) {
  uint16_t text[ROOM] = {0};
  int64_t units = -7, needed = -7;
  int32_t exact = -7, rounded = -7;
  /* Own arithmetic: 8 ft 1 1/8 in. are 97.125 in. of 40640 units. The fraction is one character, the marks are primes. */
  CHECK(FUNCTION(length_parse_utf16)(WIDE("8\x2032 1\x215b\x2033"), EDGENAIL_UNIT_INCH, &units, &exact) ==
        EDGENAIL_STATUS_OK);
  CHECK(units == 3947160 && exact == 1);
  CHECK(FUNCTION(length_show_utf16)(units, EDGENAIL_STYLE_FEET_INCHES_SIXTEENTH, EDGENAIL_ROUNDING_NEAREST, &rounded, text,
                                    ROOM, &needed) == EDGENAIL_STATUS_OK);
  CHECK(needed == 9 && wcscmp((const wchar_t *)text, L"8'-1 1/8\"") == 0 && rounded == 0);
  text[0] = 7;
  CHECK(FUNCTION(length_show_utf16)(units, EDGENAIL_STYLE_FEET_INCHES_SIXTEENTH, EDGENAIL_ROUNDING_NEAREST, &rounded, text,
                                    8, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(needed == 9 && text[0] == 7);
  units = -7;
  CHECK(FUNCTION(length_parse_utf16)(LONE_SURROGATE, 3, EDGENAIL_UNIT_INCH, &units, &exact) == EDGENAIL_STATUS_NOT_UTF16);
  CHECK(FUNCTION(length_parse_utf16)(NULL, 3, EDGENAIL_UNIT_INCH, &units, &exact) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(units == -7);
}

/* This field of the last error has to hold this word. */
static void expect(int32_t field, const wchar_t *word) {
  uint16_t text[2 * ROOM] = {0};
  int64_t needed = 0;
  CHECK(FUNCTION(error_text_utf16)(0, field, text, 2 * ROOM - 1, &needed) == EDGENAIL_STATUS_OK);
  CHECK(needed > 0 && wcslen((const wchar_t *)text) == (size_t)needed);
  CHECK(wcsstr((const wchar_t *)text, word) != NULL);
}

static int32_t choice(const uint16_t *set, int64_t set_length, const uint16_t *word, int64_t word_length) {
  int32_t number = 0;
  CHECK(FUNCTION(choice_number_utf16)(set, set_length, word, word_length, &number) == EDGENAIL_STATUS_OK);
  return number;
}

static void walls(void) {
  /* The standard of 2015: 480 plf and 15 kips/in. for 7/16 in. with 8d at 6 in.; the shared cases name the source. */
  uint16_t construction[2 * ROOM];
  int64_t needed = 0;
  double out[3] = {-7, -7, -7};
  int32_t load = choice(WIDE("load"), WIDE("seismic"));
  int32_t method = choice(WIDE("method"), WIDE("asd"));
  int32_t grade = choice(WIDE("grade"), WIDE("sheathing"));
  int32_t material = choice(WIDE("panel_material"), WIDE("osb"));
  int32_t coating = choice(WIDE("coating"), WIDE("bright"));
  int32_t status;
  CHECK(FUNCTION(unit_shear)(2015, load, method, grade, material, 0.4375, 0.131, 0.281, 2.5, coating, 6, 6, 24, 1, 0, 0.5,
                             1.5, 0, 0, 0, &out[0], &out[1], &out[2]) == EDGENAIL_STATUS_OK);
  CHECK(out[0] == 480 && out[1] == 240 && out[2] == 15);
  CHECK(FUNCTION(construction_utf16)(2015, load, method, grade, material, 0.4375, 0.131, 0.281, 2.5, coating, 6, 6, 24, 1, 0,
                                     0.5, 1.5, 0, 0, 0, construction, 2 * ROOM, &needed) == EDGENAIL_STATUS_OK);
  /* Own arithmetic: a wall of 10 ft without openings takes 10 times 240 lb; 1200 lb are half of that. */
  status = FUNCTION(wall_line_utf16)(construction, needed, choice(WIDE("line_method"), WIDE("segmented")),
                                     choice(WIDE("sharing"), WIDE("reduced_strength")), WIDE("10 ft"), WIDE("8\x2032"),
                                     WIDE(""), 1200, 0, WIDE("0"), &out[0], &out[1], &out[2]);
  CHECK(status == EDGENAIL_STATUS_OK);
  CHECK(out[0] == 2400 && out[1] == 0.5);
  out[0] = -7;
  status = FUNCTION(wall_line_utf16)(construction, needed, 1, 1, WIDE("ten feet"), WIDE("8\x2032"), WIDE(""), 1200, 0,
                                     WIDE("0"), &out[0], &out[1], &out[2]);
  CHECK(status == EDGENAIL_STATUS_INPUT);
  expect(EDGENAIL_ERROR_FIELD_FOUND, L"ten feet");
  status = FUNCTION(wall_line_utf16)(construction, needed, 1, 1, LONE_SURROGATE, 3, WIDE("8\x2032"), WIDE(""), 1200, 0,
                                     WIDE("0"), &out[0], &out[1], &out[2]);
  CHECK(status == EDGENAIL_STATUS_NOT_UTF16);
  CHECK(FUNCTION(hold_down)(NAN, 4, 8, 0, 0, &out[0]) == EDGENAIL_STATUS_INPUT);
  CHECK(out[0] == -7);
}

/* The name is not ASCII, and one of its characters takes two units. */
#define NAME "arri\x00e8re \xd83d\xdd28"
#define HOUSE(name) \
  "{\"name\":\"shed\",\"walls\":[{\"name\":\"" name "\",\"length\":\"12'\",\"sections\":[{\"bottom\":{\"bears\":\"concrete\"}," \
  "\"stack\":[{\"kind\":\"storey\",\"name\":\"ground\",\"bottom_plates\":[{\"thickness\":\"1 1/2\",\"treated\":true}]}]}]}]}"

static void plans(void) {
  static const wchar_t house[] = L"" HOUSE(NAME);
  static const wchar_t name[] = L"" NAME;
  uint16_t text[ROOM];
  int64_t right[ROOM];
  double right_again[ROOM];
  int64_t rows = 0, columns = 0, needed = 0, last = 0, row;
  edgenail_plan *plan = NULL;
  CHECK(FUNCTION(plan_new_json_utf16)((const uint16_t *)house, (int64_t)wcslen(house), &plan) == EDGENAIL_STATUS_OK);
  CHECK(FUNCTION(plan_table_size)(plan, EDGENAIL_TEXT("panels"), &rows, &columns) == EDGENAIL_STATUS_OK);
  CHECK(rows > 0 && rows < ROOM);
  CHECK(FUNCTION(plan_column_int64)(plan, EDGENAIL_TEXT("panels"), EDGENAIL_TEXT("x1"), right, ROOM, &needed) ==
        EDGENAIL_STATUS_OK);
  CHECK(FUNCTION(plan_column_double)(plan, EDGENAIL_TEXT("panels"), EDGENAIL_TEXT("x1"), right_again, ROOM, &needed) ==
        EDGENAIL_STATUS_OK);
  CHECK(needed == rows);
  for (row = 0; row < rows && row < ROOM; row++) {
    CHECK((double)right[row] == right_again[row]);
    CHECK(FUNCTION(plan_text_utf16)(plan, EDGENAIL_TEXT("panels"), EDGENAIL_TEXT("wall"), row, text, ROOM, &needed) ==
          EDGENAIL_STATUS_OK);
    CHECK(needed == (int64_t)wcslen(name) && wcsncmp((const wchar_t *)text, name, wcslen(name)) == 0);
    last = right[row] > last ? right[row] : last;
  }
  /* The wall is sheathed to its end: 12 ft of 12 in. of 40640 units. */
  CHECK(last == 5852160);
  CHECK(FUNCTION(plan_json_utf16)(plan, NULL, 0, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(needed > 1000);
  FUNCTION(plan_free)(plan);
  FUNCTION(plan_free)(NULL);
  plan = NULL;
  CHECK(FUNCTION(plan_new_json_utf16)(WIDE("{\"name\": \"shed\"}"), &plan) == EDGENAIL_STATUS_INPUT);
  expect(EDGENAIL_ERROR_FIELD_MESSAGE, L"walls");
  CHECK(FUNCTION(plan_new_json_utf16)(LONE_SURROGATE, 3, &plan) == EDGENAIL_STATUS_NOT_UTF16);
  CHECK(plan == NULL);
}

int main(void) {
  library = LoadLibraryW(L"edgenail.dll");
  if (library == NULL) {
    fprintf(stderr, "the DLL is not loaded: error %lu\n", (unsigned long)GetLastError());
    return 2;
  }
  CHECK(FUNCTION(abi)() == EDGENAIL_ABI);
  lengths();
  walls();
  plans();
  printf("%d failures\n", failures);
  return failures > 0;
}
