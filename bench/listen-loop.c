/* The detectors' loop of src/engine/listen/one-detector-loop.ts in C, for the benchmark only: two radio modes, two real audio modes, the same map of
   answers, no direct solving. Reads doubles from the file named: counts, coefficients, the map, the input; prints the time of a sample [ns] and the sum of
   the earpiece's voltages. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static double seconds(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

int main(int argc, char **argv) {
  FILE *f = fopen(argv[argc > 1 ? 1 : 0], "rb");
  double head[9];
  if (!f || fread(head, sizeof(double), 9, f) != 9) return 1;
  const long samples = (long)head[0], rows = (long)head[1], columns = (long)head[2], firstRow = (long)head[3], firstColumn = (long)head[4];
  const long size = (long)head[5];
  const double perStep = head[6], perSquare = head[8];
  const long rounds = (long)head[7];
  double k[32];
  double *offset = malloc(sizeof(double) * rows * columns), *rests = malloc(sizeof(double) * 4 * columns), *cells = malloc(sizeof(double) * size);
  double *feedRe = malloc(sizeof(double) * samples), *feedIm = malloc(sizeof(double) * samples);
  double *emfRe = malloc(sizeof(double) * samples), *emfIm = malloc(sizeof(double) * samples), *ear = malloc(sizeof(double) * samples);
  int *at = malloc(sizeof(int) * rows * columns);
  size_t got = fread(k, sizeof(double), 32, f) + fread(offset, sizeof(double), rows * columns, f) + fread(rests, sizeof(double), 4 * columns, f) +
               fread(cells, sizeof(double), size, f);
  got += fread(feedRe, sizeof(double), samples, f) + fread(feedIm, sizeof(double), samples, f);
  got += fread(emfRe, sizeof(double), samples, f) + fread(emfIm, sizeof(double), samples, f);
  if (got != (size_t)(32 + rows * columns + 4 * columns + size + 4 * samples)) return 1;
  for (long n = 0; n < rows * columns; n++) at[n] = (int)offset[n];
  const double aRe = k[0], aIm = k[1], aSRe = k[2], aSIm = k[3], aORe = k[4], aOIm = k[5];
  const double bRe = k[6], bIm = k[7], bSRe = k[8], bSIm = k[9], bORe = k[10], bOIm = k[11];
  const double past1Re = k[12], past1Im = k[13], past2Re = k[14], past2Im = k[15];
  const double pDecay = k[16], pOut = k[17], pEar = k[18], qDecay = k[19], qOut = k[20], qEar = k[21], straight = k[22];
  const double reachRe = aORe + bORe - past1Re, reachIm = aOIm + bOIm - past1Im, lift = pOut + qOut;
  double best = 1e9, sum = 0;
  for (long round = 0; round < rounds; round++) {
    double azRe = k[25], azIm = k[26], bzRe = k[27], bzIm = k[28], pY = k[23], qY = k[24];
    double uRe = 0, uIm = 0, u1Re = 0, u1Im = 0, i = 0,
           baseRe = aORe * azRe - aOIm * azIm + bORe * bzRe - bOIm * bzIm, baseIm = aORe * azIm + aOIm * azRe + bORe * bzIm + bOIm * bzRe, quiet = pOut * pY + qOut * qY;
    const double start = seconds();
    for (long n = 0; n < samples; n++) {
      const double dRe = feedRe[n] + baseRe + reachRe * uRe - reachIm * uIm, dIm = feedIm[n] + baseIm + reachRe * uIm + reachIm * uRe;
      const double before = quiet + lift * i, eRe = emfRe[n], eIm = emfIm[n];
      const double aFRe = azRe + uRe, aFIm = azIm + uIm, bFRe = bzRe + uRe, bFIm = bzIm + uIm;
      azRe = aRe * aFRe - aIm * aFIm + aSRe * eRe - aSIm * eIm;
      azIm = aRe * aFIm + aIm * aFRe + aSRe * eIm + aSIm * eRe;
      bzRe = bRe * bFRe - bIm * bFIm + bSRe * eRe - bSIm * eIm;
      bzIm = bRe * bFIm + bIm * bFRe + bSRe * eIm + bSIm * eRe;
      baseRe = past2Im * u1Im - past2Re * u1Re + (aORe * azRe - aOIm * azIm) + (bORe * bzRe - bOIm * bzIm);
      baseIm = -past2Re * u1Im - past2Im * u1Re + (aORe * azIm + aOIm * azRe) + (bORe * bzIm + bOIm * bzRe);
      pY += i;
      qY += i;
      const double sound = pEar * pY + qEar * qY;
      pY *= pDecay;
      qY *= qDecay;
      quiet = pOut * pY + qOut * qY;
      const double square = dRe * dRe + dIm * dIm;
      const long row = (long)(square * perSquare), column = (long)floor(before * perStep);
      const double *c = cells + at[(row - firstRow) * columns + column - firstColumn], *r = rests + 4 * (column - firstColumn);
      const double y = 2 * perStep * before - (double)(2 * column + 1), x = square * c[30] - c[31], xx = x * x, yy = y * y;
      const double wRe = c[0] + y * c[2] + yy * (c[5] + y * c[9]) + (c[1] + y * c[4] + yy * c[8]) * x + xx * (c[3] + y * c[7] + c[6] * x);
      const double wIm = c[10] + y * c[12] + yy * (c[15] + y * c[19]) + (c[11] + y * c[14] + yy * c[18]) * x + xx * (c[13] + y * c[17] + c[16] * x);
      const double rise = c[20] + y * c[22] + yy * (c[25] + y * c[29]) + (c[21] + y * c[24] + yy * c[28]) * x + xx * (c[23] + y * c[27] + c[26] * x);
      i = before * (r[0] + y * r[1] + yy * (r[2] + y * r[3])) + square * rise;
      uRe = wRe * dRe - wIm * dIm;
      uIm = wRe * dIm + wIm * dRe;
      u1Re = uRe;
      u1Im = uIm;
      ear[n] = sound + straight * i;
    }
    const double took = seconds() - start;
    if (took < best) best = took;
    sum = 0;
    for (long n = 0; n < samples; n++) sum += ear[n];
  }
  printf("%.4f %.17g\n", 1e9 * best / (double)samples, sum);
  return 0;
}
