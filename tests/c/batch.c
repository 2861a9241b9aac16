/*
 * A batch of houses: pushed and taken window by window, a bad one in the middle, plans on request, an end by another
 * thread. Every outcome is compared with the plan of its house alone.
 *
 *   batch FILE      FILE is a house that can be planned
 */
#define _POSIX_C_SOURCE 200809L

#include "check.h"
#include "edgenail.h"

#include <pthread.h>
#include <string.h>

enum { BAD = 33 };

/* A house that is quickly planned. */
#define SMALL EDGENAIL_TEXT("{\"walls\": [{\"name\": \"a\", \"length\": \"4 ft\"}]}")

static char *house;
static long house_size;

/* The nails of the house alone, off its table of walls. */
static int64_t nails_alone(const edgenail_plan *plan) {
  edgenail_walls_row row;
  int64_t count = 0;
  CHECK(edgenail_plan_walls(plan, 0, &row, 1, sizeof row, &count) == EDGENAIL_STATUS_OK);
  CHECK(count == 1);
  return row.nails;
}

/* Whether the JSON of the last outcome holds a text. */
static int says(const edgenail_batch *batch, const char *wanted) {
  char text[4096];
  int64_t size = 0;
  CHECK(edgenail_batch_json(batch, text, sizeof text - 1, &size) == EDGENAIL_STATUS_OK);
  text[size] = '\0';
  return strstr(text, wanted) != NULL;
}

/* More houses than one window holds. */
static void all_in_order(int64_t threads, int houses, int64_t nails) {
  edgenail_batch *batch = NULL;
  edgenail_batch_row row;
  int64_t room = 0;
  int pushed = 0;
  int taken = 0;
  CHECK(edgenail_batch_new(threads, 0, &batch) == EDGENAIL_STATUS_OK);
  while (taken < houses) {
    CHECK(edgenail_batch_room(batch, &room) == EDGENAIL_STATUS_OK);
    for (; room > 0 && pushed < houses; room--, pushed++) {
      int32_t status = pushed == BAD ? edgenail_batch_push(batch, EDGENAIL_TEXT("{\"name\":\"bad\"}"))
                                     : edgenail_batch_push(batch, SMALL);
      CHECK(status == EDGENAIL_STATUS_OK);
    }
    if (edgenail_batch_next(batch, &row, sizeof row) != EDGENAIL_STATUS_OK) {
      break;
    }
    CHECK(row.index == taken);
    CHECK(row.planned == (taken != BAD));
    CHECK(row.nails == (taken == BAD ? -1 : nails));
    CHECK(says(batch, taken == BAD ? "\"house\":\"bad\"" : "\"error\":null"));
    taken++;
  }
  CHECK(taken == houses);
  CHECK(edgenail_batch_next(batch, &row, sizeof row) == EDGENAIL_STATUS_NOT_FOUND);
  edgenail_batch_free(batch);
}

/* A plan outlives its batch, and is the plan of the house alone. */
static void plans(const edgenail_plan *alone) {
  edgenail_batch *batch = NULL;
  edgenail_batch_row row;
  edgenail_plan *plan = NULL;
  char *texts[2] = {NULL, NULL};
  int64_t sizes[2] = {0, 0};
  CHECK(edgenail_batch_new(1, 1, &batch) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_batch_take_plan(batch, &plan) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_batch_push(batch, house, house_size) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_batch_next(batch, &row, sizeof row) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_batch_take_plan(batch, &plan) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_batch_take_plan(batch, &plan) == EDGENAIL_STATUS_NOT_FOUND);
  edgenail_batch_free(batch);
  edgenail_plan_json(alone, NULL, 0, &sizes[0]);
  edgenail_plan_json(plan, NULL, 0, &sizes[1]);
  CHECK(sizes[0] == sizes[1] && sizes[0] > 0);
  texts[0] = malloc((size_t)sizes[0]);
  texts[1] = malloc((size_t)sizes[0]);
  if (texts[0] == NULL || texts[1] == NULL) {
    exit(2);
  }
  CHECK(edgenail_plan_json(alone, texts[0], sizes[0], &sizes[0]) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_plan_json(plan, texts[1], sizes[0], &sizes[1]) == EDGENAIL_STATUS_OK);
  CHECK(memcmp(texts[0], texts[1], (size_t)sizes[0]) == 0);
  free(texts[0]);
  free(texts[1]);
  edgenail_plan_free(plan);
}

static void *end(void *batch) {
  CHECK(edgenail_batch_cancel(batch) == EDGENAIL_STATUS_OK);
  return NULL;
}

static void cancelled(void) {
  edgenail_batch *batch = NULL;
  edgenail_batch_row row;
  pthread_t other;
  CHECK(edgenail_batch_new(2, 0, &batch) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_batch_push(batch, SMALL) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_batch_push(batch, SMALL) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_batch_next(batch, &row, sizeof row) == EDGENAIL_STATUS_OK);
  if (pthread_create(&other, NULL, end, batch) != 0 || pthread_join(other, NULL) != 0) {
    exit(2);
  }
  row.index = -5;
  CHECK(edgenail_batch_next(batch, &row, sizeof row) == EDGENAIL_STATUS_CANCELLED);
  CHECK(row.index == -5);
  edgenail_batch_free(batch);
}

static void misuse(void) {
  static const uint16_t lone_surrogate[] = {'{', 0xd800, '}'};
  edgenail_batch *batch = NULL;
  edgenail_batch_row row;
  edgenail_plan *plan = NULL;
  int64_t count = -7;
  char text[8];
  uint16_t units[8];
  int index;
  CHECK(edgenail_batch_new(1, 0, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_new(-1, 0, &batch) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(batch == NULL);
  edgenail_batch_free(NULL);
  CHECK(edgenail_batch_room(NULL, &count) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_push(NULL, "{}", 2) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_push_utf16(NULL, lone_surrogate, 1) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_next(NULL, &row, sizeof row) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_json(NULL, text, 8, &count) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_json_utf16(NULL, units, 8, &count) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_take_plan(NULL, &plan) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_cancel(NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(count == -7);
  CHECK(edgenail_batch_new(1, 0, &batch) == EDGENAIL_STATUS_OK);
  CHECK(edgenail_batch_room(batch, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_push(batch, NULL, 2) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_push(batch, "{}", -1) == EDGENAIL_STATUS_BAD_LENGTH);
  CHECK(edgenail_batch_push_utf16(batch, lone_surrogate, 3) == EDGENAIL_STATUS_NOT_UTF16);
  CHECK(edgenail_batch_take_plan(batch, NULL) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_json(batch, text, 8, &count) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_batch_next(batch, &row, sizeof row) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(edgenail_batch_room(batch, &count) == EDGENAIL_STATUS_OK);
  CHECK(count > 0);
  for (index = 0; index < count; index++) {
    CHECK(edgenail_batch_push_utf16(batch, lone_surrogate, 1) == EDGENAIL_STATUS_OK);
  }
  CHECK(edgenail_batch_push(batch, "{}", 2) == EDGENAIL_STATUS_FULL);
  row.index = -5;
  CHECK(edgenail_batch_next(batch, NULL, sizeof row) == EDGENAIL_STATUS_NULL_POINTER);
  CHECK(edgenail_batch_next(batch, &row, sizeof row + 8) == EDGENAIL_STATUS_ROW_SIZE);
  CHECK(edgenail_batch_next(batch, &row, 0) == EDGENAIL_STATUS_ROW_SIZE);
  CHECK(row.index == -5);
  /* The shorter row of an older header gets its front; misuse before took nothing. */
  row.planned = -5;
  CHECK(edgenail_batch_next(batch, &row, 8) == EDGENAIL_STATUS_OK);
  CHECK(row.index == 0 && row.planned == -5);
  CHECK(edgenail_batch_json(batch, text, 8, &count) == EDGENAIL_STATUS_BUFFER_TOO_SMALL);
  CHECK(count > 8);
  CHECK(edgenail_batch_take_plan(batch, &plan) == EDGENAIL_STATUS_NOT_FOUND);
  CHECK(plan == NULL);
  edgenail_batch_free(batch);
}

int main(int argc, char **argv) {
  edgenail_plan *plan = NULL;
  int64_t nails;
  if (argc != 2) {
    fprintf(stderr, "usage: batch FILE\n");
    return 2;
  }
  house = read_file(argv[1], &house_size);
  if (edgenail_plan_new_json(house, house_size, &plan) != EDGENAIL_STATUS_OK) {
    fprintf(stderr, "%s cannot be planned\n", argv[1]);
    return 2;
  }
  plans(plan);
  edgenail_plan_free(plan);
  if (edgenail_plan_new_json(SMALL, &plan) != EDGENAIL_STATUS_OK) {
    return 2;
  }
  nails = nails_alone(plan);
  all_in_order(1, 40, nails);
  all_in_order(2, 70, nails);
  cancelled();
  misuse();
  edgenail_plan_free(plan);
  free(house);
  return failures != 0;
}
