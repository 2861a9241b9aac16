/*
 * Calls functions for cells with what stands in the lines of a file, and writes what each said on a line of its own; the
 * form of both is told in crates/edgenail-cases/src/scalar.rs.
 *
 *   cells FILE
 *
 * Functions that take texts are called in UTF-8 and in UTF-16, and have to agree.
 */
#include "check.h"
#include "edgenail.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { USAGE = 99, ROOM = 1024 };

/* The arguments of this line. */
static char *arguments[64];
static size_t argument;
static size_t end;

/* The next argument. */
static const char *next(void) {
  if (argument == end) {
    fprintf(stderr, "too few arguments\n");
    exit(USAGE);
  }
  return arguments[argument++];
}

static double number(void) { return strtod(next(), NULL); }

static int32_t whole(void) { return (int32_t)strtol(next(), NULL, 10); }

static int64_t size(const char *text) { return (int64_t)strlen(text); }

/* A UTF-8 text as UTF-16, and how many units that takes. */
static int64_t wide(const char *text, uint16_t *units) {
  const unsigned char *byte = (const unsigned char *)text;
  int64_t size = 0;
  CHECK(strlen(text) < ROOM);
  while (*byte != 0) {
    int more = *byte >= 0xf0 ? 3 : *byte >= 0xe0 ? 2 : *byte >= 0xc0 ? 1 : 0;
    uint32_t point = more > 0 ? *byte & (0x3fU >> more) : *byte;
    for (byte++; more > 0; more--) {
      point = point << 6 | (*byte++ & 0x3f);
    }
    if (point >= 0x10000) {
      units[size++] = (uint16_t)(0xd800 + ((point - 0x10000) >> 10));
      point = 0xdc00 + ((point - 0x10000) & 0x3ff);
    }
    units[size++] = (uint16_t)point;
  }
  return size;
}

/* The number of the next argument, a word of a set; the number gives the word back. */
static int32_t choice(const char *set) {
  static uint16_t units[ROOM], more[ROOM];
  const char *word = next();
  char back[64];
  int32_t one = 0, other = 0;
  int64_t needed = 0;
  int64_t at;
  CHECK(edgenail_choice_number(set, size(set), word, size(word), &one) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_choice_number_utf16(units, wide(set, units), more, wide(word, more), &other) == EDGENAIL_STATUS_OK);
  CHECK(one == other);
  CHECK(edgenail_choice_word(set, size(set), one, back, sizeof back, &needed) == EDGENAIL_STATUS_OK);
  CHECK(needed == size(word) && memcmp(back, word, (size_t)needed) == 0);
  CHECK(edgenail_choice_word_utf16(units, size(set), one, more, ROOM, &needed) == EDGENAIL_STATUS_OK);
  CHECK(needed == size(word));
  for (at = 0; at < needed; at++) {
    CHECK(more[at] == (uint16_t)(unsigned char)word[at]);
  }
  return one;
}

/* What a table is asked for. */
struct face {
  int32_t edition, load, method, grade, material, coating, blocked, across, wet, high, accept;
  double thickness, shank, head, nail, edge, field, studs, gravity, member;
};

static struct face face(void) {
  struct face own;
  own.edition = whole();
  own.load = choice("load");
  own.method = choice("method");
  own.grade = choice("grade");
  own.material = choice("panel_material");
  own.thickness = number();
  own.shank = number();
  own.head = number();
  own.nail = number();
  own.coating = choice("coating");
  own.edge = number();
  own.field = number();
  own.studs = number();
  own.blocked = whole();
  own.across = whole();
  own.gravity = number();
  own.member = number();
  own.wet = whole();
  own.high = whole();
  own.accept = whole();
  return own;
}

static int32_t unit_shear(double out[3]) {
  struct face own = face();
  return edgenail_unit_shear(own.edition, own.load, own.method, own.grade, own.material, own.thickness, own.shank, own.head,
                             own.nail, own.coating, own.edge, own.field, own.studs, own.blocked, own.across, own.gravity,
                             own.member, own.wet, own.high, own.accept, &out[0], &out[1], &out[2]);
}

static int32_t wall_line(double out[3]) {
  static char text[ROOM];
  static uint16_t units[ROOM], lengths[ROOM], heights[ROOM], opened[ROOM], insets[ROOM];
  struct face own = face();
  double again[3] = {-7, -7, -7};
  int64_t needed = 0, needed_units = 0;
  int32_t method = choice("line_method");
  int32_t sharing = choice("sharing");
  const char *length = next();
  const char *height = next();
  const char *openings = next();
  double demand = number();
  double dead = number();
  const char *inset = next();
  int32_t status;
  CHECK(edgenail_construction(own.edition, own.load, own.method, own.grade, own.material, own.thickness, own.shank, own.head,
                              own.nail, own.coating, own.edge, own.field, own.studs, own.blocked, own.across, own.gravity,
                              own.member, own.wet, own.high, own.accept, text, sizeof text, &needed) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_construction_utf16(own.edition, own.load, own.method, own.grade, own.material, own.thickness, own.shank,
                                    own.head, own.nail, own.coating, own.edge, own.field, own.studs, own.blocked, own.across,
                                    own.gravity, own.member, own.wet, own.high, own.accept, units, ROOM,
                                    &needed_units) == EDGENAIL_STATUS_OK);
  CHECK(needed == needed_units);
  status = edgenail_wall_line_utf16(units, needed, method, sharing, lengths, wide(length, lengths), heights,
                                    wide(height, heights), opened, wide(openings, opened), demand, dead, insets,
                                    wide(inset, insets), &again[0], &again[1], &again[2]);
  CHECK(status == edgenail_wall_line(text, needed, method, sharing, length, size(length), height, size(height), openings,
                                     size(openings), demand, dead, inset, size(inset), &out[0], &out[1], &out[2]));
  CHECK(memcmp(out, again, sizeof again) == 0);
  return status;
}

static int32_t hold_down(double out[3]) {
  double shear = number(), length = number(), height = number(), dead = number(), inset = number();
  return edgenail_hold_down(shear, length, height, dead, inset, &out[0]);
}

static int32_t drift(double out[3]) {
  double shear = number(), height = number(), length = number(), elasticity = number(), area = number();
  double anchor = number(), stiffness = number();
  return edgenail_drift(shear, height, length, elasticity, area, anchor, stiffness, whole(), &out[0]);
}

static int32_t drift_four_terms(double out[3]) {
  double shear = number(), height = number(), length = number(), elasticity = number(), area = number();
  double anchor = number();
  int32_t nail = whole(), grade = choice("grade"), material = choice("panel_material");
  double thickness = number(), edge = number();
  return edgenail_drift_four_terms(shear, height, length, elasticity, area, anchor, nail, grade, material, thickness, edge,
                                   whole(), &out[0]);
}

static int32_t nail(double out[3]) {
  int32_t edition = whole();
  double shank = number(), length = number(), head = number(), yield = number(), side = number(), side_gravity = number();
  double between = number(), gravity = number(), depth = number(), duration = number();
  return edgenail_nail(edition, shank, length, head, yield, side, side_gravity, between, gravity, depth, duration, whole(),
                       &out[0], &out[1], &out[2]);
}

static int32_t panel_pressure(double out[3]) {
  int32_t roof = whole(), floor = whole(), plies = choice("plies"), axis = choice("axis");
  double studs = number();
  int32_t spans = whole();
  double ratio = number(), pressure = number(), duration = number();
  return edgenail_panel_pressure(roof, floor, plies, axis, studs, spans, ratio, pressure, duration, whole(), &out[0], &out[1],
                                 &out[2]);
}

static int32_t anchorage(double out[3]) {
  double shear = number(), length = number(), each = number(), uplift = number(), each_uplift = number();
  double nominal = number();
  return edgenail_anchorage(shear, length, each, uplift, each_uplift, nominal, whole(), &out[0], &out[1], &out[2]);
}

/* Writes the code and the path of each fault. */
static void write_faults(void) {
  static const int32_t FIELDS[] = {EDGENAIL_ERROR_FIELD_CODE, EDGENAIL_ERROR_FIELD_PATH};
  char text[ROOM];
  int64_t needed = 0;
  int64_t at;
  int field;
  for (at = 0; at < edgenail_error_count(); at++) {
    for (field = 0; field < 2; field++) {
      CHECK(edgenail_error_text(at, FIELDS[field], text, sizeof text, &needed) == EDGENAIL_STATUS_OK);
      printf("%c%.*s", field == 0 ? '\t' : ' ', (int)needed, text);
    }
  }
}

static void length_parse(void) {
  static const char *const NAMES[] = {"inch", "foot", "millimetre", "centimetre", "metre"};
  static const int32_t UNITS[] = {EDGENAIL_UNIT_INCH, EDGENAIL_UNIT_FOOT, EDGENAIL_UNIT_MILLIMETRE,
                                  EDGENAIL_UNIT_CENTIMETRE, EDGENAIL_UNIT_METRE};
  static uint16_t wide_text[ROOM];
  const char *text = next();
  const char *name = next();
  int64_t units = -7, again = -7;
  int32_t exact = -7, exact_again = -7;
  int32_t unit = 0;
  int32_t status;
  size_t at;
  for (at = 0; at < sizeof UNITS / sizeof UNITS[0]; at++) {
    unit = strcmp(name, NAMES[at]) == 0 ? UNITS[at] : unit;
  }
  status = edgenail_length_parse_utf16(wide_text, wide(text, wide_text), unit, &again, &exact_again);
  CHECK(status == edgenail_length_parse(text, size(text), unit, &units, &exact));
  CHECK(units == again && exact == exact_again);
  printf("%d", (int)status);
  if (status == EDGENAIL_STATUS_OK) {
    printf("\t%lld\t%d", (long long)units, (int)exact);
  } else {
    write_faults();
  }
}

static void length_show(void) {
  static uint16_t units_shown[ROOM], units_again[ROOM];
  char text[ROOM];
  int64_t units = strtoll(next(), NULL, 10), needed = 0, units_needed = 0;
  int32_t style = whole(), rounding = whole(), rounded = -7, again = -7;
  int32_t status = edgenail_length_show_utf16(units, style, rounding, &again, units_shown, ROOM, &units_needed);
  CHECK(status == edgenail_length_show(units, style, rounding, &rounded, text, sizeof text - 1, &needed));
  printf("%d", (int)status);
  if (status == EDGENAIL_STATUS_OK) {
    text[needed] = 0;
    CHECK(rounded == again);
    CHECK(wide(text, units_again) == units_needed);
    CHECK(memcmp(units_shown, units_again, (size_t)units_needed * sizeof units_again[0]) == 0);
    printf("\t%s\t%d", text, (int)rounded);
  } else {
    write_faults();
  }
}

struct function {
  const char *name;
  int32_t (*call)(double out[3]);
  int numbers;
};

static const struct function FUNCTIONS[] = {
    {"unit_shear", unit_shear, 3},         {"wall_line", wall_line, 3},
    {"hold_down", hold_down, 1},           {"drift", drift, 1},
    {"drift_four_terms", drift_four_terms, 1}, {"nail", nail, 3},
    {"panel_pressure", panel_pressure, 3}, {"anchorage", anchorage, 3},
};

/* Calls a function of numbers and writes what it said. */
static void numbers(const struct function *function) {
  double out[3] = {-7, -7, -7};
  int32_t status = function->call(out);
  int row;
  printf("%d", (int)status);
  for (row = 0; row < 3; row++) {
    uint64_t bits;
    CHECK((out[row] == -7) == (status != EDGENAIL_STATUS_OK || row >= function->numbers));
    if (status == EDGENAIL_STATUS_OK && row < function->numbers) {
      memcpy(&bits, &out[row], sizeof bits);
      printf("\t%08lx%08lx", (unsigned long)(bits >> 32), (unsigned long)(bits & 0xffffffff));
    }
  }
  if (status != EDGENAIL_STATUS_OK) {
    write_faults();
  }
}

/* Calls what stands in a line, which is taken apart. */
static void call(char *line) {
  size_t at;
  end = 0;
  argument = 1;
  do {
    CHECK(end < sizeof arguments / sizeof arguments[0]);
    arguments[end++] = line;
    line = strchr(line, '\t');
  } while (line != NULL && (*line++ = 0, 1));
  if (strcmp(arguments[0], "length_parse") == 0) {
    length_parse();
  } else if (strcmp(arguments[0], "length_show") == 0) {
    length_show();
  } else {
    for (at = 0; strcmp(arguments[0], FUNCTIONS[at].name) != 0; at++) {
      if (at + 1 == sizeof FUNCTIONS / sizeof FUNCTIONS[0]) {
        fprintf(stderr, "there is no function %s\n", arguments[0]);
        exit(USAGE);
      }
    }
    numbers(&FUNCTIONS[at]);
  }
  printf("\n");
  CHECK(argument == end);
}

int main(int count, char **names) {
  long length = 0;
  char *text;
  char *line;
  char *after;
  if (count != 2) {
    return USAGE;
  }
  text = read_file(names[1], &length);
  text[length] = 0;
  for (line = text; (after = strchr(line, '\n')) != NULL; line = after + 1) {
    *after = 0;
    call(line);
  }
  free(text);
  return failures > 0 ? USAGE : 0;
}
