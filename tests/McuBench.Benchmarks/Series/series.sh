#!/usr/bin/env bash
# Times the library, a C loop, NumPy and R on the same traces in one run: series.sh [SAMPLES] [ROWS]
# Needs gcc, /usr/bin/python3 with NumPy, SciPy and pandas, R with data.table, 8 GiB of memory and 1 GB of disk.
set -euo pipefail
cd "$(dirname "$0")"
samples=${1:-100000000}
rows=${2:-10000000}
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
gcc -O3 -march=native -fopenmp series.c -o "$scratch/series"
/usr/bin/python3 series.py codes "$scratch" "$samples"
/usr/bin/python3 series.py text "$scratch/trace.csv" "$rows"
"$scratch/series" mem "$samples" 2>/dev/null
"$scratch/series" csv "$scratch/trace.csv" 2>/dev/null
/usr/bin/python3 series.py time "$scratch" "$scratch/trace.csv"
Rscript series.R "$scratch" "$scratch/trace.csv"
MCUBENCH_TRACE=$scratch/trace.csv dotnet run -c Release --project .. -- --filter '*Series*' --job short
