#!/usr/bin/env python3
"""Reference solutions of parts of the model, and of one whole robot, by SciPy's solve_ivp with tight tolerances.

Written from the model's equations alone; shares no code with the engine. Run by hand when an equation changes:

    python3 make_reference.py > reference.json

Tests read reference.json and never run Python. SI throughout; axes ISO 8855.
"""
import json
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.spatial.transform import Rotation

G = 9.80665


def alpha(m, z_max, b=0.8):
    """Elasto-plastic switch: 0 below b z_max, linear up to 1 at z_max."""
    return min(1.0, max(0.0, (m - b * z_max) / ((1.0 - b) * z_max)))


class Tyre:
    def __init__(self, mu_s=1.0, mu_k=0.8, v_s=0.5, z_break=0.4e-3, zeta=0.3, load0=3.0, kappa=120.0,
                 k_c=2500.0, c_c=2.0, m_t=0.004, k_z=9000.0, d_z=2.0):
        self.mu_s, self.mu_k, self.v_s = mu_s, mu_k, v_s
        self.sigma0 = mu_s / z_break
        self.sigma1 = 2.0 * zeta * np.sqrt(m_t * self.sigma0 / load0)
        self.kappa, self.k_c, self.c_c, self.m_t, self.k_z, self.d_z = kappa, k_c, c_c, m_t, k_z, d_z

    def rates(self, load, v, q, z, w, rolling):
        """v, q, z, w as (x, y); returns F, v', q', z'."""
        force = self.k_c * q + self.c_c * (v - w)
        if load > 0.0:
            speed = np.hypot(v[0], v[1])
            mu = self.mu_k + (self.mu_s - self.mu_k) * np.exp(-(speed / self.v_s) ** 2)
            z_max = mu / self.sigma0
            length = np.hypot(z[0], z[1])
            along = max(0.0, (v[0] * z[0] + v[1] * z[1]) / length) if length > 0.0 else 0.0
            decay = alpha(length, z_max) * self.sigma0 * along / mu + self.kappa * abs(rolling)
            z_rate = v - decay * z
            sigma1 = self.sigma1 / (1.0 + self.sigma1 * decay / (4.0 * self.sigma0))
            tread = -load * (self.sigma0 * z + sigma1 * z_rate)
        else:
            z_rate = -z / 0.001
            tread = np.zeros(2)
        return force, (tread - force) / self.m_t, v - w, z_rate


class Motor:
    """Brushed motor behind a gear; controller with a current limit; friction of the gear with its wind-up."""

    def __init__(self, k_t=0.008, r=2.5, tau0=0.0008, j=2.5e-7, ratio=20.0, eta=0.8, s_max=0.01, limit=5.0, r_on=0.05):
        self.k, self.r, self.tau0, self.j = k_t * ratio, r + r_on, tau0 * ratio, j * ratio * ratio
        self.eta, self.s_max, self.limit = eta, s_max, limit

    def current(self, command, bus, omega):
        """Voltage between 0 and d V_b with |i| within the limit; returns i and the power from the bus."""
        full = command * bus
        volt = full
        i = (volt - self.k * omega) / self.r
        if abs(i) > self.limit:
            volt = min(max(self.k * omega + np.sign(i) * self.limit * self.r, min(0.0, full)), max(0.0, full))
            i = (volt - self.k * omega) / self.r
        return i, volt * i

    def friction(self, i, s):
        return (self.tau0 + (1.0 - self.eta) * abs(self.k * i)) * s / self.s_max

    def wind_rate(self, omega, s):
        along = max(0.0, omega * np.sign(s))
        return omega - alpha(abs(s), self.s_max) * along / self.s_max * s


TABLE = ((0.0, 3.3), (0.1, 3.7), (0.5, 3.85), (1.0, 4.2))
R_B, CAPACITY, CELLS = 0.12, 0.45 * 3600.0, 3


def bus_voltage(charge, power_at):
    """Largest root of V = V_oc - R_b P(V) / V."""
    v_oc = CELLS * np.interp(charge, [p[0] for p in TABLE], [p[1] for p in TABLE])
    v = brentq(lambda b: b - v_oc + R_B * power_at(b) / b, 0.5 * v_oc, 1.5 * v_oc, xtol=1e-13, rtol=1e-14)
    return v, (v_oc - v) / R_B


def solve(rates, start, end, samples, method="LSODA", rtol=1e-9, atol=1e-12, max_step=1e-3):
    times = np.linspace(0.0, end, samples + 1)
    result = solve_ivp(rates, (0.0, end), start, method=method, t_eval=times, rtol=rtol, atol=atol, max_step=max_step)
    if not result.success:
        raise RuntimeError(result.message)
    return result.t, result.y


def skid_step():
    """A heavy body on four skids slides at a practically constant speed: ring and bristle from rest under a speed."""
    mass, load, speed = 100.0, 3.0, 0.2
    tyre = Tyre(kappa=0.0)

    def rates(_, y):
        x, u, v, q, z = y
        force, dv, dq, dz = tyre.rates(load, np.array([v, 0.0]), np.array([q, 0.0]), np.array([z, 0.0]), np.array([u, 0.0]), 0.0)
        return [u, 4.0 * force[0] / mass, dv[0], dq[0], dz[0]]

    t, y = solve(rates, [0.0, speed, speed, 0.0, 0.0], 0.05, 50, method="Radau")
    force = [tyre.k_c * q + tyre.c_c * (v - u) for u, v, q in zip(y[1], y[2], y[3])]
    return {"time_s": t, "force_n": force, "speed_m_per_s": y[1]}


def spin_up():
    """Four motors spin free wheels up from rest against gear friction, all on one sagging battery. No grip: the tread ring
    hangs on rim and body by its carcass alone, m_t v' = -F, which pushes the body a little."""
    motor, tyre, radius, mass = Motor(limit=3.0), Tyre(), 0.028, 1.36
    inertia = 1.2e-5 + motor.j

    def electric(charge, omega):
        bus, amps = bus_voltage(charge, lambda b: 4.0 * motor.current(1.0, b, omega)[1])
        return bus, amps, motor.current(1.0, bus, omega)[0]

    def rates(_, y):
        omega, s, charge, v, q, u = y
        _, amps, i = electric(charge, omega)
        force = tyre.k_c * q + tyre.c_c * (v - u + omega * radius)
        return [(motor.k * i - motor.friction(i, s) - radius * force) / inertia, motor.wind_rate(omega, s), -amps / CAPACITY,
                -force / tyre.m_t, v - u + omega * radius, 4.0 * force / mass]

    t, y = solve(rates, [0.0, 0.0, 1.0, 0.0, 0.0, 0.0], 0.2, 100, method="DOP853", max_step=1e-4)
    parts = [electric(c, w) for w, c in zip(y[0], y[2])]
    return {"time_s": t, "omega_rad_per_s": y[0], "bus_v": [p[0] for p in parts], "battery_a": [p[1] for p in parts],
            "motor_a": [p[2] for p in parts]}


def on_rings(mass, push, speed):
    """A mass on four tread rings without grip, pushed back by push(x, u): states x, u and, alike for all rings, v and q."""
    tyre = Tyre()

    def rates(_, y):
        x, u, v, q = y
        force = tyre.k_c * q + tyre.c_c * (v - u)
        return [u, (4.0 * force - push(x, u)) / mass, -force / tyre.m_t, v - u]

    return rates, [0.0, speed, speed, 0.0]


def tether_catch():
    """A mass without friction runs into its tether and comes back: k e (1 + d e') at least 0, a Hunt-Crossley collision."""
    stiffness, damping, slack = 4000.0, 0.5, 0.01

    def pull(x, u):
        e = x - slack
        return max(0.0, stiffness * e * (1.0 + damping * u)) if e > 0.0 else 0.0

    t, y = solve(*on_rings(1.36, pull, 0.5), 0.12, 120, method="DOP853", max_step=1e-4)
    return {"time_s": t, "x_m": y[0], "speed_m_per_s": y[1], "force_n": [pull(a, b) for a, b in zip(y[0], y[1])]}


def wall_bounce():
    """The same mass against a wall. Two level edges and two upright ones of its front press with half a weight each:
    F = 0.63 k/2 sum of 2 d (L/2 + l0/4), l0 = 0.1 m, times (1 + lambda d') at least 0."""
    stiffness, width, high, damping, gap = 1.0e5, 0.16, 0.06 - 0.004, 0.8, 0.01
    edges = 2.0 * (2.0 * (width / 2.0 + 0.025) + 2.0 * (high / 2.0 + 0.025))

    def push(x, u):
        e = x - gap
        return max(0.0, 0.63 * stiffness * 0.5 * edges * e * (1.0 + damping * u)) if e > 0.0 else 0.0

    t, y = solve(*on_rings(1.36, push, 0.5), 0.08, 80, method="DOP853", max_step=1e-4)
    return {"time_s": t, "x_m": y[0], "speed_m_per_s": y[1]}


def launch():
    """A whole four-wheel robot driven off at full throttle with some turn, all six degrees of freedom."""
    mass, length, width, box, h = 1.36, 0.18, 0.16, 0.06, 0.028
    i_roll, i_pitch, i_yaw = (mass / 12.0 * s for s in (width**2 + box**2, length**2 + box**2, length**2 + width**2))
    places = [(0.055, 0.075), (0.055, -0.075), (-0.055, 0.075), (-0.055, -0.075)]
    radius, tyre, motor = 0.028, Tyre(), Motor()
    inertia = 1.2e-5 + motor.j
    throttle, turn = 1.0, 0.1
    most = max(1.0, abs(throttle) + abs(turn))
    commands = [(throttle - turn if y > 0.0 else throttle + turn) / most for _, y in places]

    def electric(charge, omegas):
        def power(b):
            return sum(motor.current(c, b, w)[1] for c, w in zip(commands, omegas))
        bus, amps = bus_voltage(charge, power)
        return bus, amps, [motor.current(c, bus, w)[0] for c, w in zip(commands, omegas)]

    # place, quaternion (x, y, z, w), velocity along the floor's axes, rates about the body's; then eight of each wheel, and the charge
    up = np.array([0.0, 0.0, 1.0])

    def wheels(y):
        turn = Rotation.from_quat(y[3:7])
        w = turn.apply(y[10:13])
        axle = turn.apply([0.0, 1.0, 0.0])
        length = np.sqrt(1.0 - axle[2] ** 2)
        along = np.cross(axle, up) / length
        across = np.cross(up, along)
        for i, (x_i, y_i) in enumerate(places):
            own = y[13 + 8 * i:21 + 8 * i]
            omega = own[6]
            arm = turn.apply([x_i, y_i, radius - h]) - radius * (up - axle[2] * axle) / length
            speed = y[7:10] + np.cross(w, arm)
            height = h + y[2] + arm[2]
            load = max(0.0, -tyre.k_z * height * (1.0 - tyre.d_z * speed[2])) if height < 0.0 else 0.0
            rim = np.array([speed @ along - omega * radius, speed @ across])
            force, dv, dq, dzb = tyre.rates(load, own[0:2], own[2:4], own[4:6], rim, omega * radius)
            yield arm, force[0] * along + force[1] * across + load * up, load, force, dv, dq, dzb, omega, own[7]

    def rates(_, y):
        _, amps, currents = electric(y[45], [y[19 + 8 * i] for i in range(4)])
        out = np.zeros(46)
        f = np.zeros(3)
        moment = np.zeros(3)
        for i, (arm, push, load, force, dv, dq, dzb, omega, s) in enumerate(wheels(y)):
            f += push
            moment += np.cross(arm, push)
            spin = (motor.k * currents[i] - motor.friction(currents[i], s) - radius * force[0]) / inertia
            out[13 + 8 * i:21 + 8 * i] = [*dv, *dq, *dzb, spin, motor.wind_rate(omega, s)]
        turn = Rotation.from_quat(y[3:7])
        w = y[10:13]
        out[0:3] = y[7:10]
        qx, qy, qz, qw = y[3:7]
        out[3:7] = 0.5 * np.array([qw * w[0] + qy * w[2] - qz * w[1], qw * w[1] + qz * w[0] - qx * w[2],
                                   qw * w[2] + qx * w[1] - qy * w[0], -qx * w[0] - qy * w[1] - qz * w[2]])
        out[7:10] = f / mass - G * up
        inert = np.array([i_roll, i_pitch, i_yaw])
        out[10:13] = (turn.inv().apply(moment) - np.cross(w, inert * w)) / inert
        out[45] = -amps / CAPACITY
        return out

    start = np.zeros(46)
    start[2] = -mass * G / (4.0 * tyre.k_z)
    start[6] = 1.0
    start[45] = 1.0
    t, y = solve(rates, start, 0.5, 100, rtol=1e-8, atol=1e-11)
    rows = [list(wheels(column)) for column in y.T]
    turns = [Rotation.from_quat(column[3:7]).as_matrix() for column in y.T]
    heading = np.array([np.arctan2(m[1, 0] - m[0, 1], m[0, 0] + m[1, 1]) for m in turns])
    speed = np.cos(heading) * y[7] + np.sin(heading) * y[8]
    answer = {"time_s": t, "x_m": y[0], "y_m": y[1], "heading_rad": heading, "speed_m_per_s": speed, "yaw_rate_rad_per_s": y[12],
              "pitch_rad": [np.arctan2(-m[2, 0], m[2, 2]) for m in turns], "roll_rad": [np.arctan2(m[2, 1], m[2, 2]) for m in turns],
              "bus_v": [electric(column[45], [column[19 + 8 * i] for i in range(4)])[0] for column in y.T]}
    for i in range(4):
        answer[f"load_{i}_n"] = [row[i][2] for row in rows]
        answer[f"longitudinal_force_{i}_n"] = [row[i][3][0] for row in rows]
        answer[f"lateral_force_{i}_n"] = [row[i][3][1] for row in rows]
        answer[f"omega_{i}_rad_per_s"] = y[19 + 8 * i]
    return answer


def main():
    cases = {}
    for make in (skid_step, spin_up, tether_catch, wall_bounce, launch):
        print(make.__name__, file=sys.stderr)
        cases[make.__name__] = {k: [float(f"{a:.10g}") for a in v] for k, v in make().items()}
    json.dump({"scipy": scipy.__version__, "numpy": np.__version__, "cases": cases}, sys.stdout, indent=0)
    print()


if __name__ == "__main__":
    main()
