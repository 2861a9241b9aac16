/*
 * Threads that plan, fail and read one shared plan at the same time: each sees its own errors only, and all read
 * the same document.
 *
 *   threads FILE      FILE is a house that can be planned
 */
#define _POSIX_C_SOURCE 200809L

#include "check.h"
#include "edgenail.h"

#include <pthread.h>
#include <string.h>

enum { THREADS = 4, ROUNDS = 5 };

static const edgenail_plan *shared;
static char *expected;
static int64_t expected_size;
static pthread_mutex_t counting = PTHREAD_MUTEX_INITIALIZER;

static void expect(int condition) {
  pthread_mutex_lock(&counting);
  CHECK(condition);
  pthread_mutex_unlock(&counting);
}

static void *work(void *argument) {
  int odd = *(const int *)argument % 2;
  int round;
  char *text = malloc((size_t)expected_size);
  if (text == NULL) {
    exit(2);
  }
  for (round = 0; round < ROUNDS; round++) {
    int64_t needed = 0;
    edgenail_plan *none = NULL;
    expect(edgenail_plan_json(shared, text, expected_size, &needed) == EDGENAIL_STATUS_OK);
    expect(needed == expected_size && memcmp(text, expected, (size_t)needed) == 0);
    if (odd) {
      expect(edgenail_plan_new_json(EDGENAIL_TEXT("["), &none) == EDGENAIL_STATUS_INPUT);
      expect(edgenail_error_count() >= 1);
    } else {
      expect(edgenail_plan_table_count(shared, &needed) == EDGENAIL_STATUS_OK);
      expect(edgenail_error_count() == 0);
    }
  }
  free(text);
  return NULL;
}

int main(int argc, char **argv) {
  pthread_t threads[THREADS];
  int numbers[THREADS];
  edgenail_plan *plan = NULL;
  long size = 0;
  char *text;
  int index;
  if (argc != 2) {
    fprintf(stderr, "usage: threads FILE\n");
    return 2;
  }
  text = read_file(argv[1], &size);
  if (edgenail_plan_new_json(text, size, &plan) != EDGENAIL_STATUS_OK) {
    fprintf(stderr, "%s cannot be planned\n", argv[1]);
    return 2;
  }
  free(text);
  edgenail_plan_json(plan, NULL, 0, &expected_size);
  expected = malloc((size_t)expected_size);
  if (expected == NULL ||
      edgenail_plan_json(plan, expected, expected_size, &expected_size) != EDGENAIL_STATUS_OK) {
    return 2;
  }
  shared = plan;
  for (index = 0; index < THREADS; index++) {
    numbers[index] = index;
    if (pthread_create(&threads[index], NULL, work, &numbers[index]) != 0) {
      return 2;
    }
  }
  for (index = 0; index < THREADS; index++) {
    pthread_join(threads[index], NULL);
  }
  free(expected);
  edgenail_plan_free(plan);
  return failures == 0 ? 0 : 1;
}
