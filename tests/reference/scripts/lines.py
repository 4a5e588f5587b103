"""The straight lines of lines.R again, by statsmodels. Run: /usr/bin/python3 lines.py"""
import numpy as np
import statsmodels.api as sm

from data import write_json

x = np.array([1.5, 2, 3.25, 4, 5.5, 6, 7.75, 9])
y = np.array([2.1, 2.9, 4.2, 4.4, 6.9, 7.1, 9.4, 10.2])
u = np.array([0.1, 0.2, 0.1, 0.3, 0.25, 0.2, 0.4, 0.15])
design = sm.add_constant(x)
at = np.array([[1.0, 5.0]])


def describe(fit):
    frame = fit.get_prediction(at).summary_frame(alpha=0.05)
    return {
        "coefficients": fit.params, "errors": fit.bse, "covariance": fit.cov_params()[0, 1],
        "sd": np.sqrt(fit.scale), "r_squared": fit.rsquared,
        "interval_intercept": fit.conf_int(0.1)[0], "interval_slope": fit.conf_int(0.1)[1],
        "mean_at_5": [frame["mean"][0], frame["mean_ci_lower"][0], frame["mean_ci_upper"][0]],
    }


def lists(value):
    if isinstance(value, dict):
        return {name: lists(part) for name, part in value.items()}
    return list(value) if isinstance(value, np.ndarray) else value


plain = sm.OLS(y, design).fit()
frame = plain.get_prediction(at).summary_frame(alpha=0.05)
weighted = sm.WLS(y, design, weights=1 / u**2).fit()
known = sm.WLS(y, design, weights=1 / u**2).fit(cov_type="fixed scale", cov_kwds={"scale": 1})
write_json(lists({
    "plain": {**describe(plain), "prediction_at_5": [frame["mean"][0], frame["obs_ci_lower"][0], frame["obs_ci_upper"][0]]},
    "relative": describe(weighted),
    "absolute": {
        "coefficients": known.params, "errors": known.bse, "covariance": known.cov_params()[0, 1],
        "chi_squared": float(((y - known.fittedvalues) ** 2 / u**2).sum()),
        "interval_intercept": known.conf_int(0.1)[0], "interval_slope": known.conf_int(0.1)[1],
    },
}), "lines-statsmodels.json")
