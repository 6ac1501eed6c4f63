/* KLU beside the engine: refactor + solve on a fixed pattern, as a library in C is used. Reads one matrix, prints JSON.
   usage: klu MATRIX complex|real BATCH_MS BATCHES
   MATRIX: int32 n, entries; int32 starts[n + 1], rows[entries]; double values[2 entries], b[2 n], all by columns. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <suitesparse/klu.h>

/* Processor time in microseconds, as clock.mjs measures. */
static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return (double)t.tv_sec * 1e6 + (double)t.tv_nsec * 1e-3;
}

static int ascending(const void *a, const void *b) {
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

static void *get(FILE *file, size_t size) {
  void *p = malloc(size > 0 ? size : 1);
  if (p == NULL || fread(p, 1, size, file) != size) exit(2);
  return p;
}

/* Median microseconds of refactor + solve; the solution is left in x. */
static double measure(int n, int *starts, int *rows, double *values, double *b, double *x, int complex, int scale,
                      double batch, int batches) {
  klu_common common;
  klu_defaults(&common);
  common.scale = scale;
  klu_symbolic *symbolic = klu_analyze(n, starts, rows, &common);
  klu_numeric *numeric = complex ? klu_z_factor(starts, rows, values, symbolic, &common)
                                 : klu_factor(starts, rows, values, symbolic, &common);
  if (numeric == NULL) exit(3);
  size_t bytes = sizeof(double) * (size_t)n * (complex ? 2 : 1);
  double *times = malloc(sizeof(double) * (size_t)batches);
  int ok = 1;
  long count = 1;
  for (int k = -1; k < batches; k++) { /* the first batch only finds how many runs fill one */
    double start = now(), used = 0;
    long runs = 0;
    while (k < 0 ? used < 3 * batch * 1e3 : runs < count) {
      memcpy(x, b, bytes);
      if (complex) {
        ok &= klu_z_refactor(starts, rows, values, symbolic, numeric, &common);
        ok &= klu_z_solve(symbolic, numeric, n, 1, x, &common);
      } else {
        ok &= klu_refactor(starts, rows, values, symbolic, numeric, &common);
        ok &= klu_solve(symbolic, numeric, n, 1, x, &common);
      }
      runs++;
      if (k < 0) used = now() - start;
    }
    if (k < 0) count = 1 + runs / 3;
    else times[k] = (now() - start) / (double)count;
  }
  if (!ok) exit(4);
  qsort(times, (size_t)batches, sizeof(double), ascending);
  double median = times[batches / 2];
  free(times);
  if (complex) klu_z_free_numeric(&numeric, &common);
  else klu_free_numeric(&numeric, &common);
  klu_free_symbolic(&symbolic, &common);
  return median;
}

/* Largest |A x - b| over the largest |x|. */
static double residual(int n, int *starts, int *rows, double *values, double *b, double *x, int complex) {
  int width = complex ? 2 : 1;
  double *rest = malloc(sizeof(double) * (size_t)(width * n)), worst = 0, size = 0;
  for (int k = 0; k < width * n; k++) {
    rest[k] = -b[k];
    size = fmax(size, fabs(x[k]));
  }
  for (int j = 0; j < n; j++)
    for (int t = starts[j]; t < starts[j + 1]; t++) {
      if (complex) {
        double ar = values[2 * t], ai = values[2 * t + 1];
        rest[2 * rows[t]] += ar * x[2 * j] - ai * x[2 * j + 1];
        rest[2 * rows[t] + 1] += ar * x[2 * j + 1] + ai * x[2 * j];
      } else rest[rows[t]] += values[t] * x[j];
    }
  for (int k = 0; k < width * n; k++) worst = fmax(worst, fabs(rest[k]));
  free(rest);
  return worst / size;
}

int main(int argc, char **argv) {
  if (argc != 5) return 1;
  FILE *file = fopen(argv[1], "rb");
  if (file == NULL) return 1;
  int complex = strcmp(argv[2], "complex") == 0, batches = atoi(argv[4]);
  double batch = atof(argv[3]);
  int *head = get(file, 2 * sizeof(int)), n = head[0], entries = head[1];
  int *starts = get(file, sizeof(int) * (size_t)(n + 1));
  int *rows = get(file, sizeof(int) * (size_t)entries);
  double *values = get(file, 2 * sizeof(double) * (size_t)entries);
  double *b = get(file, 2 * sizeof(double) * (size_t)n);
  fclose(file);
  if (!complex) {
    for (int t = 0; t < entries; t++) values[t] = values[2 * t];
    for (int k = 0; k < n; k++) b[k] = b[2 * k];
  }
  double *x = malloc(2 * sizeof(double) * (size_t)n);
  double scaled = measure(n, starts, rows, values, b, x, complex, 2, batch, batches);
  double plain = measure(n, starts, rows, values, b, x, complex, -1, batch, batches);
  printf("{\"scaled\": %.17g, \"plain\": %.17g, \"residual\": %.17g}\n", scaled, plain,
         residual(n, starts, rows, values, b, x, complex));
  return 0;
}
