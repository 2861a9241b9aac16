/* One check of a test program: says where it failed, and goes on. */
#ifndef CHECK_H
#define CHECK_H

#include <stdio.h>
#include <stdlib.h>

static int failures;

#define CHECK(condition) \
  do { \
    if (!(condition)) { \
      fprintf(stderr, "%s:%d: %s\n", __FILE__, __LINE__, #condition); \
      failures++; \
    } \
  } while (0)

#ifndef NO_FILES
/* The whole of a file, with its size; ends the program when it cannot be read. */
static char *read_file(const char *path, long *size) {
  FILE *file = fopen(path, "rb");
  char *text = NULL;
  if (file != NULL && fseek(file, 0, SEEK_END) == 0 && (*size = ftell(file)) >= 0) {
    rewind(file);
    text = malloc((size_t)*size + 1);
  }
  if (text == NULL || fread(text, 1, (size_t)*size, file) != (size_t)*size) {
    fprintf(stderr, "cannot read %s\n", path);
    exit(2);
  }
  fclose(file);
  return text;
}
#endif

#endif
