/*
 * Plans a house and prints what to buy.
 *
 *   cc -std=c99 -I bindings/c/include bindings/c/examples/plan_house.c target/release/libedgenail.a \
 *      -lpthread -ldl -lm -o plan_house
 *   ./plan_house house.json
 */
#include "edgenail.h"

#include <stdio.h>
#include <stdlib.h>

/* Prints every fault of the last call, one a line. */
static void print_errors(void) {
  int64_t count = edgenail_error_count();
  int64_t index;
  for (index = 0; index < count; index++) {
    char message[512];
    int64_t size = 0;
    if (edgenail_error_text(index, EDGENAIL_ERROR_FIELD_MESSAGE, message, sizeof message, &size) ==
        EDGENAIL_STATUS_OK) {
      fprintf(stderr, "%.*s\n", (int)size, message);
    }
  }
}

/* Prints a table of the plan as comma-separated values. */
static int print_table(const edgenail_plan *plan, const char *name, int64_t length) {
  int64_t size = 0;
  char *text;
  if (edgenail_plan_csv(plan, name, length, NULL, 0, &size) != EDGENAIL_STATUS_BUFFER_TOO_SMALL) {
    print_errors();
    return EXIT_FAILURE;
  }
  text = malloc((size_t)size);
  if (text == NULL || edgenail_plan_csv(plan, name, length, text, size, &size) != EDGENAIL_STATUS_OK) {
    free(text);
    return EXIT_FAILURE;
  }
  fwrite(text, 1, (size_t)size, stdout);
  free(text);
  return EXIT_SUCCESS;
}

int main(int argc, char **argv) {
  static char text[1 << 20];
  edgenail_plan *plan = NULL;
  size_t length;
  int result;
  FILE *file = argc == 2 ? fopen(argv[1], "rb") : NULL;
  if (file == NULL) {
    fprintf(stderr, "usage: plan_house house.json\n");
    return EXIT_FAILURE;
  }
  length = fread(text, 1, sizeof text, file);
  fclose(file);
  if (edgenail_abi() != EDGENAIL_ABI) {
    fprintf(stderr, "the library is not the one of this header\n");
    return EXIT_FAILURE;
  }
  if (edgenail_plan_new_json(text, (int64_t)length, &plan) != EDGENAIL_STATUS_OK) {
    print_errors();
    return EXIT_FAILURE;
  }
  result = print_table(plan, EDGENAIL_TEXT("takeoff"));
  edgenail_plan_free(plan);
  return result;
}
