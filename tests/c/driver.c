/*
 * Runs one operation of the library and writes the bytes it gave to standard output; the exit code is the
 * status. On an error of the library the document of the error is written in place of the result.
 *
 *   driver plan FILE                 the plan of the house in FILE, as JSON
 *   driver batch FILE                what becomes of the houses in FILE, one a line, as a list in JSON
 *   driver what-if FILE CHANGES      what is different after the changes in the second file
 *   driver capacity FILE             the answer to the question of capacity in FILE
 *   driver table NAME FILE           a table of that plan, as comma-separated values
 *   driver svg WALL FILE             the drawing of a wall
 *   driver why WALL FILE             why its layout and not another
 *   driver length TEXT UNIT          a length that is read, such as "8' 1" inch
 *   driver show UNITS STYLE ROUNDING a length that is shown; style and rounding by number
 */
#include "edgenail.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const int USAGE = 99;

/* The whole of a file; ends the program when it cannot be read. */
static char *read_file(const char *path, int64_t *length) {
  FILE *file = fopen(path, "rb");
  size_t capacity = 1 << 16;
  size_t size = 0;
  char *text = malloc(capacity);
  if (file == NULL || text == NULL) {
    fprintf(stderr, "cannot read %s\n", path);
    exit(USAGE);
  }
  for (;;) {
    size_t count = fread(text + size, 1, capacity - size, file);
    size += count;
    if (count == 0) {
      break;
    }
    if (size == capacity) {
      char *larger = realloc(text, capacity *= 2);
      if (larger == NULL) {
        fprintf(stderr, "no memory for %s\n", path);
        exit(USAGE);
      }
      text = larger;
    }
  }
  fclose(file);
  *length = (int64_t)size;
  return text;
}

static char *room(int64_t size) {
  char *buffer = malloc((size_t)size + 1);
  if (buffer == NULL) {
    fprintf(stderr, "no memory\n");
    exit(USAGE);
  }
  return buffer;
}

/* Writes the error of the last call: its document, or for misuse its first entry. */
static int32_t write_error(int32_t status) {
  int64_t size = 0;
  char *buffer;
  edgenail_error_json(NULL, 0, &size);
  if (size == 0) {
    edgenail_error_text(0, EDGENAIL_ERROR_FIELD_MESSAGE, NULL, 0, &size);
    buffer = room(size);
    if (edgenail_error_text(0, EDGENAIL_ERROR_FIELD_MESSAGE, buffer, size, &size) == EDGENAIL_STATUS_OK) {
      fprintf(stderr, "%.*s\n", (int)size, buffer);
    }
  } else {
    buffer = room(size);
    if (edgenail_error_json(buffer, size, &size) == EDGENAIL_STATUS_OK) {
      fwrite(buffer, 1, (size_t)size, stdout);
    }
  }
  free(buffer);
  return status;
}

/* What the command asks of a plan, into a buffer of the caller. */
static int32_t ask(const edgenail_plan *plan, const char *operation, const char *name, char *buffer,
                   int64_t capacity, int64_t *needed) {
  if (strcmp(operation, "plan") == 0) {
    return edgenail_plan_json(plan, buffer, capacity, needed);
  }
  if (strcmp(operation, "table") == 0) {
    return edgenail_plan_csv(plan, name, (int64_t)strlen(name), buffer, capacity, needed);
  }
  if (strcmp(operation, "frame") == 0) {
    return edgenail_plan_frame_svg(plan, name, (int64_t)strlen(name), buffer, capacity, needed);
  }
  if (strcmp(operation, "why") == 0) {
    return edgenail_plan_why(plan, name, (int64_t)strlen(name), buffer, capacity, needed);
  }
  if (strcmp(operation, "cut-sheets") == 0) {
    return edgenail_plan_cut_sheets_svg(plan, strtoll(name, NULL, 10), buffer, capacity, needed);
  }
  return edgenail_plan_wall_svg(plan, name, (int64_t)strlen(name), buffer, capacity, needed);
}

static int32_t plan_file(const char *operation, const char *name, const char *path) {
  edgenail_plan *plan = NULL;
  int64_t length = 0;
  int64_t size = 0;
  char *text = read_file(path, &length);
  int32_t status = edgenail_plan_new_json(text, length, &plan);
  free(text);
  if (status != EDGENAIL_STATUS_OK) {
    return write_error(status);
  }
  status = ask(plan, operation, name, NULL, 0, &size);
  if (status == EDGENAIL_STATUS_BUFFER_TOO_SMALL) {
    char *buffer = room(size);
    status = ask(plan, operation, name, buffer, size, &size);
    if (status == EDGENAIL_STATUS_OK) {
      fwrite(buffer, 1, (size_t)size, stdout);
    }
    free(buffer);
  }
  if (status != EDGENAIL_STATUS_OK) {
    write_error(status);
  }
  edgenail_plan_free(plan);
  return status;
}

/* Takes one outcome of a batch and writes it; what the batch says. */
static int32_t write_outcome(const edgenail_batch *batch) {
  edgenail_batch_row row;
  int64_t size = 0;
  char *buffer;
  int32_t status = edgenail_batch_next(batch, &row, sizeof row);
  if (status != EDGENAIL_STATUS_OK) {
    return status;
  }
  edgenail_batch_json(batch, NULL, 0, &size);
  buffer = room(size);
  status = edgenail_batch_json(batch, buffer, size, &size);
  if (row.index > 0) {
    putchar(',');
  }
  fwrite(buffer, 1, (size_t)size, stdout);
  free(buffer);
  return status;
}

static int32_t batch_file(const char *path) {
  edgenail_batch *batch = NULL;
  int64_t length = 0;
  char *text = read_file(path, &length);
  char *line = text;
  int32_t status = edgenail_batch_new(2, 0, &batch);
  putchar('[');
  while (status == EDGENAIL_STATUS_OK && line < text + length) {
    int64_t space = 0;
    char *after = memchr(line, '\n', (size_t)(text + length - line));
    after = after == NULL ? text + length : after;
    edgenail_batch_room(batch, &space);
    if (space > 0) {
      status = edgenail_batch_push(batch, line, after - line);
      line = after + 1;
    } else {
      status = write_outcome(batch);
    }
  }
  while (status == EDGENAIL_STATUS_OK) {
    status = write_outcome(batch);
  }
  putchar(']');
  edgenail_batch_free(batch);
  free(text);
  return status == EDGENAIL_STATUS_NOT_FOUND ? EDGENAIL_STATUS_OK : write_error(status);
}

static int32_t what_if_files(const char *house_path, const char *changes_path) {
  int64_t house_length = 0;
  int64_t changes_length = 0;
  int64_t size = 0;
  char *house = read_file(house_path, &house_length);
  char *changes = read_file(changes_path, &changes_length);
  int32_t status = edgenail_what_if_json(house, house_length, changes, changes_length, NULL, 0, &size);
  if (status == EDGENAIL_STATUS_BUFFER_TOO_SMALL) {
    char *buffer = room(size);
    status = edgenail_what_if_json(house, house_length, changes, changes_length, buffer, size, &size);
    if (status == EDGENAIL_STATUS_OK) {
      fwrite(buffer, 1, (size_t)size, stdout);
    }
    free(buffer);
  }
  free(house);
  free(changes);
  return status == EDGENAIL_STATUS_OK ? status : write_error(status);
}

static int32_t capacity_file(const char *path) {
  int64_t length = 0;
  int64_t size = 0;
  char *text = read_file(path, &length);
  int32_t status = edgenail_capacity_json(text, length, NULL, 0, &size);
  if (status == EDGENAIL_STATUS_BUFFER_TOO_SMALL) {
    char *buffer = room(size);
    status = edgenail_capacity_json(text, length, buffer, size, &size);
    if (status == EDGENAIL_STATUS_OK) {
      fwrite(buffer, 1, (size_t)size, stdout);
    }
    free(buffer);
  }
  free(text);
  if (status != EDGENAIL_STATUS_OK) {
    write_error(status);
  }
  return status;
}

static int32_t unit_named(const char *name) {
  static const char *const names[] = {"inch", "foot", "millimetre", "centimetre", "metre"};
  static const int32_t units[] = {EDGENAIL_UNIT_INCH, EDGENAIL_UNIT_FOOT, EDGENAIL_UNIT_MILLIMETRE,
                                  EDGENAIL_UNIT_CENTIMETRE, EDGENAIL_UNIT_METRE};
  size_t index;
  for (index = 0; index < sizeof units / sizeof units[0]; index++) {
    if (strcmp(name, names[index]) == 0) {
      return units[index];
    }
  }
  return 0;
}

static int32_t read_length(const char *text, const char *unit) {
  int64_t units = 0;
  int32_t exact = 0;
  int32_t status = edgenail_length_parse(text, (int64_t)strlen(text), unit_named(unit), &units, &exact);
  if (status != EDGENAIL_STATUS_OK) {
    return write_error(status);
  }
  printf("{\"units\":%lld,\"exact\":%s}", (long long)units, exact ? "true" : "false");
  return status;
}

static int32_t show_length(const char *units, const char *style, const char *rounding) {
  char text[128];
  int64_t size = 0;
  int64_t index;
  int32_t rounded = 0;
  int32_t status = edgenail_length_show(strtoll(units, NULL, 10), (int32_t)strtol(style, NULL, 10),
                                        (int32_t)strtol(rounding, NULL, 10), &rounded, text, sizeof text, &size);
  if (status != EDGENAIL_STATUS_OK) {
    return write_error(status);
  }
  printf("{\"text\":\"");
  for (index = 0; index < size; index++) {
    printf("%s%c", text[index] == '"' ? "\\" : "", text[index]);
  }
  printf("\",\"rounded\":%s}", rounded ? "true" : "false");
  return status;
}

int main(int argc, char **argv) {
  if (edgenail_abi() != EDGENAIL_ABI) {
    fprintf(stderr, "the library is not the one of this header\n");
    return USAGE;
  }
  if (argc == 3 && strcmp(argv[1], "plan") == 0) {
    return plan_file(argv[1], "", argv[2]);
  }
  if (argc == 3 && strcmp(argv[1], "batch") == 0) {
    return batch_file(argv[2]);
  }
  if (argc == 3 && strcmp(argv[1], "capacity") == 0) {
    return capacity_file(argv[2]);
  }
  if (argc == 4 && strcmp(argv[1], "what-if") == 0) {
    return what_if_files(argv[2], argv[3]);
  }
  if (argc == 4 && strcmp(argv[1], "length") != 0) {
    return plan_file(argv[1], argv[2], argv[3]);
  }
  if (argc == 4 && strcmp(argv[1], "length") == 0) {
    return read_length(argv[2], argv[3]);
  }
  if (argc == 5 && strcmp(argv[1], "show") == 0) {
    return show_length(argv[2], argv[3], argv[4]);
  }
  fprintf(stderr, "usage: driver plan FILE | batch FILE | what-if FILE CHANGES | capacity FILE | table NAME FILE | svg WALL FILE | why WALL FILE | frame WALL FILE | "
                  "cut-sheets PAGE FILE | length TEXT UNIT | show UNITS STYLE ROUNDING\n");
  return USAGE;
}
