// An invented workload: the power at one frequency of a made-up echo, computed often enough to take a while.
// Prints a checksum, so that a build which computes something else is found out.
#include <math.h>
#include <stdio.h>

int main(void) {
    double sum = 0;
    for (int round = 0; round < 40; round++) {
        double s1 = 0, s2 = 0, coefficient = 2 * cos(0.3 + round * 0.01);
        for (int i = 0; i < 60000; i++) {
            double s = sin(i * 0.3) + coefficient * s1 - s2;
            s2 = s1;
            s1 = s;
        }
        sum += s1 * s1 + s2 * s2 - coefficient * s1 * s2;
    }
    printf("%.6e\n", sum);
    return 0;
}
