#!/usr/bin/env bash
# Runs the scripts again and says which expected values came out otherwise: all of them, or those named. Some minutes.
# Needs R 4.2 with robustbase, MASS, boot, lme4, nlme, multcomp and nortest, and python3 with SciPy, statsmodels and mpmath
# (Debian: r-base-core r-cran-…, python3-…); PYTHON names another Python.
set -euo pipefail
cd "$(dirname "$0")/scripts"
scripts=("$@")
[ $# -gt 0 ] || scripts=(*.R *.py)

for script in "${scripts[@]}"; do
    case $script in
        data.R | data.py | *_coverage.py | cluster_cutoff.py) continue ;; # read by the others; or print a table for people
        *.R) run=(Rscript "$script") ;;
        *) run=("${PYTHON:-/usr/bin/python3}" -W ignore "$script") ;;
    esac
    echo "$script"
    # Most write their own files; the head of the rest says which one their output is.
    target=$(sed -n '1,10s:.*> \.\./\([a-z0-9-]*\.json\).*:\1:p' "$script")
    if [ -n "$target" ]; then
        "${run[@]}" >"../$target.new"
        mv "../$target.new" "../$target"
    else
        "${run[@]}" >/dev/null
    fi
done
git diff --stat --exit-code -- .. && echo "Nothing has changed."
