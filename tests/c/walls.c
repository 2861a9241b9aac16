/*
 * Rows of a wall schedule, one a line of a file: name, length, plate height, stud spacing, openings, practice, parted by
 * tabs.
 *
 *   walls figures FILE     each row by itself through the functions for cells: sheets, nails, blocks, money, minutes,
 *                          findings that refuse and that have to be mended
 *   walls schedule FILE    all rows in one schedule: its house as JSON, the new sheets of the plan, then the street of
 *                          that house and its like
 *
 * Functions that take texts are called in UTF-8 and in UTF-16, and have to agree.
 */
#include "check.h"
#include "edgenail.h"

#include <string.h>

enum { ROOM = 1024, FIELDS = 6 };

struct row {
  char *text[FIELDS];
  uint16_t units[FIELDS][ROOM];
  int64_t size[FIELDS];
  double length, plate_height, stud_spacing;
};

/* ASCII only, as the file is. */
static void widen(struct row *row, int field) {
  int64_t at;
  CHECK(row->size[field] < ROOM);
  for (at = 0; at < row->size[field]; at++) {
    row->units[field][at] = (uint16_t)(unsigned char)row->text[field][at];
  }
}

/* Takes a line off the text; 0 at its end. */
static int next_row(char **text, struct row *row) {
  char *line = *text;
  char *end = strchr(line, '\n');
  int field;
  if (end == NULL) {
    return 0;
  }
  *end = 0;
  *text = end + 1;
  for (field = 0; field < FIELDS; field++) {
    char *tab = strchr(line, '\t');
    CHECK((tab == NULL) == (field == FIELDS - 1));
    if (tab != NULL) {
      *tab = 0;
    }
    row->text[field] = line;
    row->size[field] = (int64_t)strlen(line);
    widen(row, field);
    line = tab == NULL ? line : tab + 1;
  }
  row->length = strtod(row->text[1], NULL);
  row->plate_height = strtod(row->text[2], NULL);
  row->stud_spacing = strtod(row->text[3], NULL);
  return 1;
}

#define SIZES row.length, row.plate_height, row.stud_spacing
#define TEXTS row.text[4], row.size[4], row.text[5], row.size[5]
#define WIDE row.units[4], row.size[4], row.units[5], row.size[5]

static void figures(char *text) {
  static struct row row;
  int rows = 0;
  while (next_row(&text, &row)) {
    int64_t sheets, nails, blocks, refuse, mend, one = -7;
    int64_t again[5];
    double money, minutes, money_again, minutes_again;
    CHECK(edgenail_wall_figures(SIZES, TEXTS, &sheets, &nails, &blocks, &money, &minutes, &refuse, &mend) ==
          EDGENAIL_STATUS_OK);
    if (rows % 10 == 0) {
      CHECK(edgenail_wall_figures_utf16(SIZES, WIDE, &again[0], &again[1], &again[2], &money_again, &minutes_again,
                                        &again[3], &again[4]) == EDGENAIL_STATUS_OK);
      CHECK(again[0] == sheets && again[1] == nails && again[2] == blocks && again[3] == refuse && again[4] == mend);
      CHECK(memcmp(&money, &money_again, sizeof money) == 0 && memcmp(&minutes, &minutes_again, sizeof minutes) == 0);
      CHECK(edgenail_wall_sheets_utf16(SIZES, WIDE, &one) == EDGENAIL_STATUS_OK && one == sheets);
      CHECK(edgenail_wall_nails_utf16(SIZES, WIDE, &one) == EDGENAIL_STATUS_OK && one == nails);
      CHECK(edgenail_wall_blocks_utf16(SIZES, WIDE, &one) == EDGENAIL_STATUS_OK && one == blocks);
    }
    CHECK(edgenail_wall_sheets(SIZES, TEXTS, &one) == EDGENAIL_STATUS_OK && one == sheets);
    CHECK(edgenail_wall_nails(SIZES, TEXTS, &one) == EDGENAIL_STATUS_OK && one == nails);
    CHECK(edgenail_wall_blocks(SIZES, TEXTS, &one) == EDGENAIL_STATUS_OK && one == blocks);
    printf("%lld %lld %lld %.4f %.4f %lld %lld\n", (long long)sheets, (long long)nails, (long long)blocks, money, minutes,
           (long long)refuse, (long long)mend);
    rows++;
  }
  CHECK(rows > 0);
}

static int64_t new_sheets(const edgenail_plan *plan) {
  int64_t total = 0;
  int64_t needed = 0;
  int64_t at;
  int64_t *offcut;
  int64_t *drop;
  CHECK(edgenail_plan_table_size(plan, EDGENAIL_TEXT("sheets"), &needed, &at) == EDGENAIL_STATUS_OK);
  offcut = calloc((size_t)needed + 1, sizeof *offcut);
  drop = calloc((size_t)needed + 1, sizeof *drop);
  if (offcut == NULL || drop == NULL) {
    exit(2);
  }
  CHECK(edgenail_plan_column_int64(plan, EDGENAIL_TEXT("sheets"), EDGENAIL_TEXT("offcut"), offcut, needed, &needed) ==
        EDGENAIL_STATUS_OK);
  CHECK(edgenail_plan_column_int64(plan, EDGENAIL_TEXT("sheets"), EDGENAIL_TEXT("drop_wall_index"), drop, needed,
                                   &needed) == EDGENAIL_STATUS_OK);
  for (at = 0; at < needed; at++) {
    total += offcut[at] < 0 && drop[at] < 0;
  }
  free(offcut);
  free(drop);
  return total;
}

static void street(const edgenail_plan *plan) {
  const edgenail_plan *houses[2];
  edgenail_street *made = NULL;
  int64_t needed = 0;
  char *json;
  houses[0] = plan;
  houses[1] = plan;
  CHECK(edgenail_street_new(houses, 2, 1000000, &made) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_street_json(made, NULL, 0, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  json = malloc((size_t)needed);
  if (json == NULL) {
    exit(2);
  }
  CHECK(edgenail_street_json(made, json, needed, &needed) == EDGENAIL_STATUS_OK);
  printf("%.*s\n", (int)needed, json);
  free(json);
  edgenail_street_free(made);
}

static void schedule(char *text) {
  static struct row row;
  static const uint16_t job[] = {'j', 'o', 'b'};
  edgenail_wall_schedule *one = NULL;
  edgenail_wall_schedule *other = NULL;
  edgenail_plan *plan = NULL;
  int64_t rows = 0;
  int64_t count = -7;
  int64_t needed = 0;
  int64_t units_needed = 0;
  char *json;
  uint16_t *units;
  CHECK(edgenail_wall_schedule_new("job", 3, 0, 0, 0, 0, 0, 0, &one) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_wall_schedule_new_utf16(job, 3, 0, 0, 0, 0, 0, 0, &other) == EDGENAIL_STATUS_OK);
  while (next_row(&text, &row)) {
    CHECK(edgenail_wall_schedule_add(one, row.text[0], row.size[0], SIZES, TEXTS, "", 0, 0, 0) == EDGENAIL_STATUS_OK);
    CHECK(edgenail_wall_schedule_add(one, row.text[0], row.size[0], SIZES, TEXTS, "", 0, 0, 0) == EDGENAIL_STATUS_INPUT);
    CHECK(edgenail_wall_schedule_add_utf16(other, row.units[0], row.size[0], SIZES, WIDE, job, 0, 0, 0) ==
          EDGENAIL_STATUS_OK);
    rows++;
  }
  CHECK(edgenail_wall_schedule_count(one, &count) == EDGENAIL_STATUS_OK && count == rows);
  CHECK(edgenail_wall_schedule_json(one, NULL, 0, &needed) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  json = malloc((size_t)needed);
  units = calloc((size_t)needed, sizeof *units);
  if (json == NULL || units == NULL) {
    exit(2);
  }
  CHECK(edgenail_wall_schedule_json(one, json, needed, &needed) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_wall_schedule_json_utf16(other, units, needed, &units_needed) == EDGENAIL_STATUS_OK);
  CHECK(units_needed == needed);
  for (count = 0; count < needed; count++) {
    CHECK(units[count] == (uint16_t)(unsigned char)json[count]);
  }
  printf("%.*s\n", (int)needed, json);
  CHECK(edgenail_wall_schedule_plan(one, &plan) == EDGENAIL_STATUS_OK);
  edgenail_wall_schedule_free(one);
  edgenail_wall_schedule_free(other);
  printf("%lld\n", (long long)new_sheets(plan));
  street(plan);
  edgenail_plan_free(plan);
  free(json);
  free(units);
}

int main(int argc, char **argv) {
  long size = 0;
  char *text;
  if (argc != 3) {
    fprintf(stderr, "usage: walls figures|schedule FILE\n");
    return 2;
  }
  text = read_file(argv[2], &size);
  text[size] = 0;
  if (strcmp(argv[1], "schedule") == 0) {
    schedule(text);
  } else {
    figures(text);
  }
  free(text);
  return failures == 0 ? 0 : 1;
}
