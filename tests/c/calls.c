/*
 * Times calls from C: nanoseconds a call, the least of several rounds, one function a line.
 */
#define _POSIX_C_SOURCE 199309L
#define NO_FILES
#include "check.h"
#include "edgenail.h"

#include <time.h>

enum { ROUNDS = 7 };

static double now(void) {
  struct timespec at;
  clock_gettime(CLOCK_MONOTONIC, &at);
  return (double)at.tv_sec * 1e9 + (double)at.tv_nsec;
}

#define TIME(name, calls, call) \
  do { \
    double best = 1e300; \
    int round, at; \
    for (round = 0; round < ROUNDS; round++) { \
      double start = now(); \
      double each; \
      for (at = 0; at < (calls); at++) { \
        CHECK((call) == EDGENAIL_STATUS_OK); \
      } \
      each = (now() - start) / (calls); \
      best = each < best ? each : best; \
    } \
    printf("%s %.0f\n", name, best); \
  } while (0)

int main(void) {
  static const uint16_t size[] = {'8', '\'', ' ', '1', ' ', '1', '/', '8'};
  char text[64];
  uint16_t units[64];
  double one = 0, two = 0, three = 0;
  int64_t length = 0, needed = 0;
  int32_t flag = 0;
  TIME("length_from_double", 1000000, edgenail_length_from_double(97.125, EDGENAIL_UNIT_INCH, &length, &flag));
  TIME("length_parse", 200000, edgenail_length_parse("8' 1 1/8", 8, EDGENAIL_UNIT_INCH, &length, &flag));
  TIME("length_parse_utf16", 200000, edgenail_length_parse_utf16(size, 8, EDGENAIL_UNIT_INCH, &length, &flag));
  TIME("length_show", 200000,
       edgenail_length_show(3947160, EDGENAIL_STYLE_FEET_INCHES_SIXTEENTH, EDGENAIL_ROUNDING_NEAREST, &flag, text, 64, &needed));
  TIME("length_show_utf16", 200000,
       edgenail_length_show_utf16(3947160, EDGENAIL_STYLE_FEET_INCHES_SIXTEENTH, EDGENAIL_ROUNDING_NEAREST, &flag, units, 64,
                                  &needed));
  TIME("hold_down", 20000, edgenail_hold_down(250, 4, 8, 0, 0, &one));
  TIME("unit_shear", 20000,
       edgenail_unit_shear(2015, EDGENAIL_LOAD_SEISMIC, EDGENAIL_METHOD_ASD, EDGENAIL_GRADE_SHEATHING,
                           EDGENAIL_PANEL_MATERIAL_OSB, 0.4375, 0.131, 0.281, 2.5, EDGENAIL_COATING_BRIGHT, 6, 6, 24, 1, 0,
                           0.5, 1.5, 0, 0, 0, &one, &two, &three));
  return failures == 0 ? 0 : 1;
}
