/*
 * Calls a function for cells with what stands on the command line, and writes each number that it gave on a line of its
 * own; the exit code is the status. On an error of the library its document is written instead.
 *
 *   cells NAME ARGUMENT...
 *
 * Names of the sets of `edgenail_choice_number` are written as words, everything else as numbers; only the texts of a wall
 * line are texts. Functions that take texts are called in UTF-8 and in UTF-16, and have to agree.
 */
#define NO_FILES
#include "check.h"
#include "edgenail.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { USAGE = 99, ROOM = 1024 };

static char **argument;
static char **end;

/* The next argument. */
static const char *next(void) {
  if (argument == end) {
    fprintf(stderr, "too few arguments\n");
    exit(USAGE);
  }
  return *argument++;
}

static double number(void) { return strtod(next(), NULL); }

static int32_t whole(void) { return (int32_t)strtol(next(), NULL, 10); }

static int64_t size(const char *text) { return (int64_t)strlen(text); }

/* ASCII as UTF-16. */
static const uint16_t *wide(const char *text, uint16_t *units) {
  size_t at;
  CHECK(strlen(text) < ROOM);
  for (at = 0; text[at] != 0; at++) {
    units[at] = (uint16_t)(unsigned char)text[at];
  }
  return units;
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
  CHECK(edgenail_choice_number_utf16(wide(set, units), size(set), wide(word, more), size(word), &other) ==
        EDGENAIL_STATUS_OK);
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
  status = edgenail_wall_line_utf16(units, needed, method, sharing, wide(length, lengths), size(length),
                                    wide(height, heights), size(height), wide(openings, opened), size(openings), demand,
                                    dead, wide(inset, insets), size(inset), &again[0], &again[1], &again[2]);
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

int main(int count, char **arguments) {
  static char error[1 << 16];
  double out[3] = {-7, -7, -7};
  int64_t needed = 0;
  size_t at;
  int row;
  if (count < 2) {
    return USAGE;
  }
  argument = arguments + 2;
  end = arguments + count;
  for (at = 0; at < sizeof FUNCTIONS / sizeof FUNCTIONS[0]; at++) {
    const struct function *function = &FUNCTIONS[at];
    if (strcmp(arguments[1], function->name) == 0) {
      int32_t status = function->call(out);
      CHECK(argument == end);
      for (row = 0; row < 3; row++) {
        CHECK((out[row] == -7) == (status != EDGENAIL_STATUS_OK || row >= function->numbers));
      }
      if (status == EDGENAIL_STATUS_OK) {
        for (row = 0; row < function->numbers; row++) {
          printf("%.17g\n", out[row]);
        }
      } else if (edgenail_error_json(error, sizeof error, &needed) == EDGENAIL_STATUS_OK) {
        fwrite(error, 1, (size_t)needed, stdout);
      }
      return failures > 0 ? USAGE : status;
    }
  }
  fprintf(stderr, "there is no function %s\n", arguments[1]);
  return USAGE;
}
