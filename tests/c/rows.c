/*
 * Reads every table both as rows and as columns: both must agree, and rows must have the layout of the tables'
 * definitions. Wrong sizes and places must be refused.
 *
 *   rows FILE      FILE is a house that can be planned
 */
#include "check.h"
#include "edgenail.h"

#include <stddef.h>
#include <string.h>

enum { SLOT = 8 };

/* Memory for so many values, and one more, so that there is never none. */
static void *values(int64_t count, size_t size) {
  void *memory = calloc((size_t)count + 1, size);
  if (memory == NULL) {
    exit(2);
  }
  return memory;
}

static int64_t row_count(const edgenail_plan *plan, const char *table, int64_t length) {
  int64_t rows = -1;
  int64_t columns = -1;
  CHECK(edgenail_plan_table_size(plan, table, length, &rows, &columns) == EDGENAIL_STATUS_OK);
  return rows;
}

/* A whole table, and every wrong way of asking for it. */
#define TABLE(name, fields) \
  { \
    int64_t rows = row_count(plan, EDGENAIL_TEXT(#name)); \
    int64_t size = sizeof(edgenail_##name##_row); \
    int64_t count = -7; \
    edgenail_##name##_row *all = values(rows, sizeof *all); \
    CHECK(size == (fields) * SLOT); \
    CHECK(edgenail_plan_##name(NULL, 0, all, rows, size, &count) == EDGENAIL_STATUS_NULL_POINTER); \
    CHECK(edgenail_plan_##name(plan, 0, NULL, rows, size, &count) == EDGENAIL_STATUS_NULL_POINTER); \
    CHECK(edgenail_plan_##name(plan, 0, all, rows, size, NULL) == EDGENAIL_STATUS_NULL_POINTER); \
    CHECK(edgenail_plan_##name(plan, -1, all, rows, size, &count) == EDGENAIL_STATUS_BAD_LENGTH); \
    CHECK(edgenail_plan_##name(plan, 0, all, -1, size, &count) == EDGENAIL_STATUS_BAD_LENGTH); \
    CHECK(edgenail_plan_##name(plan, 0, all, rows, -SLOT, &count) == EDGENAIL_STATUS_BAD_LENGTH); \
    CHECK(edgenail_plan_##name(plan, 0, all, rows, 0, &count) == EDGENAIL_STATUS_ROW_SIZE); \
    CHECK(edgenail_plan_##name(plan, 0, all, rows, SLOT - 1, &count) == EDGENAIL_STATUS_ROW_SIZE); \
    CHECK(edgenail_plan_##name(plan, 0, all, rows, size + SLOT, &count) == EDGENAIL_STATUS_ROW_SIZE); \
    CHECK(edgenail_plan_##name(plan, rows + 1, all, rows, size, &count) == EDGENAIL_STATUS_NOT_FOUND); \
    CHECK(count == -7); \
    CHECK(edgenail_plan_##name(plan, rows, all, 1, size, &count) == EDGENAIL_STATUS_OK && count == 0); \
    CHECK(edgenail_plan_##name(plan, 0, all, 0, size, &count) == EDGENAIL_STATUS_OK && count == 0); \
    CHECK(edgenail_plan_##name(plan, 0, all, rows + 1, size, &count) == EDGENAIL_STATUS_OK); \
    CHECK(count == rows); \
    if (rows > 1) { \
      edgenail_##name##_row last; \
      CHECK(edgenail_plan_##name(plan, rows - 1, &last, 5, size, &count) == EDGENAIL_STATUS_OK && count == 1); \
      CHECK(memcmp(&last, &all[rows - 1], sizeof last) == 0); \
      /* The rows of a shorter struct are the fronts of ours. */ \
      CHECK(edgenail_plan_##name(plan, rows - 2, &last, 1, SLOT, &count) == EDGENAIL_STATUS_OK && count == 1); \
      CHECK(memcmp(&last, &all[rows - 2], SLOT) == 0); \
      CHECK(memcmp((char *)&last + SLOT, (char *)&all[rows - 1] + SLOT, sizeof last - SLOT) == 0); \
    } \
    free(all); \
    tables++; \
    all_rows += rows; \
  }

#define FIELD(name, field, place, type, read) \
  { \
    int64_t rows = row_count(plan, EDGENAIL_TEXT(#name)); \
    int64_t count = -1; \
    int64_t row; \
    edgenail_##name##_row *all = values(rows, sizeof *all); \
    type *column = values(rows, sizeof *column); \
    CHECK(offsetof(edgenail_##name##_row, field) == (place) * SLOT); \
    CHECK(edgenail_plan_##name(plan, 0, all, rows, sizeof *all, &count) == EDGENAIL_STATUS_OK); \
    CHECK(read(plan, EDGENAIL_TEXT(#name), EDGENAIL_TEXT(#field), column, rows, &count) == EDGENAIL_STATUS_OK); \
    CHECK(count == rows); \
    for (row = 0; row < rows; row++) { \
      CHECK(memcmp(&all[row].field, &column[row], sizeof column[row]) == 0); \
    } \
    free(column); \
    free(all); \
  }

#define INT(name, field, place) FIELD(name, field, place, int64_t, edgenail_plan_column_int64)
#define DOUBLE(name, field, place) FIELD(name, field, place, double, edgenail_plan_column_double)

int main(int argc, char **argv) {
  edgenail_plan *plan = NULL;
  int64_t tables = 0;
  int64_t listed = 0;
  int64_t all_rows = 0;
  long size = 0;
  char *text;
  if (argc != 2) {
    fprintf(stderr, "usage: rows FILE\n");
    return 2;
  }
  text = read_file(argv[1], &size);
  CHECK(edgenail_plan_new_json(text, size, &plan) == EDGENAIL_STATUS_OK);
  free(text);
  if (plan == NULL) {
    return 1;
  }
#include "rows_list.h"
  CHECK(edgenail_plan_table_count(plan, &listed) == EDGENAIL_STATUS_OK && listed == tables);
  CHECK(all_rows > 0);
  edgenail_plan_free(plan);
  return failures == 0 ? 0 : 1;
}
