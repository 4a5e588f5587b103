/* What a plain C loop takes for the same work: the sum of N samples in memory (charge), the sum of products (energy),
   and a bare parse of digits from a mapped text file. No compensation, no extremes, no checks.
   gcc -O3 -march=native -fopenmp series.c -o series
   ./series mem [N=100000000]
   ./series csv FILE
   Prints task, engine, median seconds and a result, by tabs; least and greatest seconds go to stderr. */
#include <fcntl.h>
#include <omp.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>

#define REPS 15
#define L 16 /* independent accumulators; 16 read fastest here, 64 and more slow two columns down */
static int threads;

/* One pass over n elements, split over the threads; each thread adds in L lanes. */
#define KERNEL(name, T, ACC, EXPR)                                            \
  static double name(const void *p, const void *q, size_t n) {                \
    ACC total = 0;                                                            \
    _Pragma("omp parallel num_threads(threads) reduction(+ : total)") {       \
      size_t t = omp_get_thread_num(), step = n / threads / L * L;            \
      const T *x = (const T *)p + t * step, *y = (const T *)q + t * step;     \
      ACC s[L] = {0};                                                         \
      for (size_t i = 0; i < step; i += L)                                    \
        for (int j = 0; j < L; j++) s[j] += EXPR;                             \
      for (int j = 0; j < L; j++) total += s[j];                              \
    }                                                                         \
    return (double)total;                                                     \
  }
KERNEL(sum_f64, double, double, x[i + j])
KERNEL(sum_f32, float, double, x[i + j])
KERNEL(dot_f64, double, double, x[i + j] * y[i + j])
KERNEL(dot_f32, float, double, (double)x[i + j] * y[i + j])
KERNEL(dot_i16, int16_t, int64_t, (int32_t)x[i + j] * y[i + j])

/* int16 column: 32-bit lanes, emptied into 64 bits before 2^15 additions */
static double sum_i16(const void *p, const void *q, size_t n) {
  int64_t total = 0;
#pragma omp parallel num_threads(threads) reduction(+ : total)
  {
    size_t t = omp_get_thread_num(), step = n / threads / 64 * 64, block = 64 * 32000;
    const int16_t *x = (const int16_t *)p + t * step;
    for (size_t a = 0; a < step; a += block) {
      int32_t s[64] = {0};
      size_t e = a + block < step ? a + block : step;
      for (size_t i = a; i < e; i += 64)
        for (int j = 0; j < 64; j++) s[j] += x[i + j];
      for (int j = 0; j < 64; j++) total += s[j];
    }
  }
  return (double)total;
}

static double fill(const void *p, const void *q, size_t n) {
  double *d = (double *)p;
#pragma omp parallel for num_threads(threads) schedule(static)
  for (size_t i = 0; i < n; i++) d[i] = 1.0;
  return 0;
}

static int cmp(const void *a, const void *b) { return (*(double *)a > *(double *)b) - (*(double *)a < *(double *)b); }

static void bench(const char *task, double (*f)(const void *, const void *, size_t), const void *p, const void *q,
                  size_t n, double bytes, int inner) {
  double t[REPS], r = f(p, q, n);
  for (int k = 0; k < REPS; k++) {
    double a = omp_get_wtime();
    for (int c = 0; c < inner; c++) r = f(p, q, n);
    t[k] = (omp_get_wtime() - a) / inner;
  }
  qsort(t, REPS, sizeof *t, cmp);
  printf("%s\tC-%dthread\t%.6g\t%.1f GB/s (best %.1f); %.17g\n", task, threads, t[REPS / 2], bytes / t[REPS / 2] / 1e9,
         bytes / t[0] / 1e9, r);
  fprintf(stderr, "# %s min %.6g max %.6g\n", task, t[0], t[REPS - 1]);
}

static double lines(const void *p, const void *q, size_t n) {
  size_t c = 0;
#pragma omp parallel for simd num_threads(threads) reduction(+ : c)
  for (size_t i = 0; i < n; i++) c += ((const char *)p)[i] == '\n';
  return c;
}

/* "123.456789,0.000123456789\n": digits only, no sign and no exponent; returns charge in pC (column 2 sum x 10 us). */
static double parse(const void *p, const void *q, size_t n) {
  int64_t total = 0;
#pragma omp parallel num_threads(threads) reduction(+ : total)
  {
    int t = omp_get_thread_num();
    const char *s = (const char *)p + n / threads * t, *e = t == threads - 1 ? (const char *)p + n : s + n / threads;
    while (s[-(t > 0)] != '\n') s++; /* t=0: skips the header to its newline */
    if (t == 0) s++;
    double tsum = 0;
    while (s < e) {
      int64_t v = 0, w = 0;
      for (; *s != ','; s++) if (*s != '.') v = v * 10 + (*s - '0');
      for (s++; *s != '\n'; s++) if (*s != '.') w = w * 10 + (*s - '0');
      s++;
      tsum += v * 1e-6; /* both columns are converted, as a reader must */
      total += w + (tsum < 0);
    }
  }
  return (double)total * 1e-5;
}

int main(int argc, char **argv) {
  if (argc > 2 && !strcmp(argv[1], "csv")) {
    struct stat st;
    int fd = open(argv[2], O_RDONLY);
    if (fd < 0 || fstat(fd, &st)) return 1;
    char *p = mmap(0, st.st_size, PROT_READ, MAP_SHARED | MAP_POPULATE, fd, 0);
    for (threads = 1; threads <= 2; threads++) {
      bench("9.limit_count_newlines", lines, p, p, st.st_size, st.st_size, 1);
      bench("9.limit_parse_digits", parse, p, p, st.st_size, st.st_size, 1);
    }
    return 0;
  }
  size_t n = argc > 2 ? atol(argv[2]) : 100000000, bytes = (n * 8 >> 21 << 21) + (2 << 20);
  char *p = aligned_alloc(2 << 20, bytes), *q = aligned_alloc(2 << 20, bytes), name[64];
  madvise(p, bytes, MADV_HUGEPAGE), madvise(q, bytes, MADV_HUGEPAGE);
  memset(p, 0, bytes), memset(q, 0, bytes);
  int in = n > 10000000 ? 1 : 200;
#define B(label, f, size)                                                      \
  snprintf(name, 64, "8.limit_%s_%.0e", label, (double)n);                     \
  bench(name, f, p, q, n, (double)n * (size), in);
  for (threads = 1; threads <= 2; threads++) {
    B("charge_f64", sum_f64, 8) B("charge_f32", sum_f32, 4) B("charge_i16", sum_i16, 2)
    B("energy_f64", dot_f64, 16) B("energy_f32", dot_f32, 8) B("energy_i16", dot_i16, 4)
  }
  for (threads = 1; threads <= 2; threads++) { B("write_f64", fill, 8) }
  return 0;
}
