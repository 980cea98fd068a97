"""Trucks between a plant and a paver, simulated apart from Laygate, to set beside the engine of the shift.

    python3 tests/Tools/closed_network.py

Needs Python 3.9 or later, nothing else. Shares no code with the program.

Method: discrete events. Load 4 min and unload 5 min at one place each, first come first served; haul 20 min, return 18 min.
All four times lognormal: coefficient of variation 0.3 of the services, 0.15 of the journeys. 8 runs of 200,000 min after
2,000 min, each with its own seed. Prints loads an hour and use of the paver with their standard errors; with exponential
services also the exact mean value analysis (Reiser and Lavenberg, Journal of the ACM 27(2), 1980; recalled).
"""
import heapq
import math
import random
import statistics

LOAD, UNLOAD, OUT, BACK = 4.0, 5.0, 20.0, 18.0


def lognormal(draw, mean, variation):
    if not variation:
        return mean
    sigma = math.sqrt(math.log(1 + variation * variation))
    return draw.lognormvariate(math.log(mean) - sigma * sigma / 2, sigma)


def run(trucks, service, travel, seed, warm=2_000.0, end=202_000.0):
    draw, free, busy, loads = random.Random(seed), [0.0, 0.0], 0.0, 0
    events = [(0.0, truck, 0) for truck in range(trucks)]  # moment of arrival, truck, place: 0 plant, 1 paver
    heapq.heapify(events)
    while events[0][0] < end:
        now, truck, place = heapq.heappop(events)
        mean = UNLOAD if place else LOAD
        time = draw.expovariate(1 / mean) if service is None else lognormal(draw, mean, service)
        start = max(now, free[place])
        free[place] = start + time
        if place and start >= warm and free[1] <= end:
            busy, loads = busy + time, loads + 1
        heapq.heappush(events, (free[place] + lognormal(draw, BACK if place else OUT, travel), truck, 1 - place))
    return 60 * loads / (end - warm), busy / (end - warm)


def exact(trucks):
    queue, services = [0.0, 0.0], (LOAD, UNLOAD)
    for n in range(1, trucks + 1):
        stay = [s * (1 + q) for s, q in zip(services, queue)]
        rate = n / (OUT + BACK + sum(stay))
        queue = [rate * s for s in stay]
    return 60 * rate, UNLOAD * rate


if __name__ == "__main__":
    for title, service, travel in (("services and journeys vary moderately", 0.3, 0.15), ("exponential services", None, 0.3)):
        for trucks in (6, 9, 10):
            seen = [run(trucks, service, travel, seed) for seed in range(1, 9)]
            loads, use = ([one[i] for one in seen] for i in (0, 1))
            spread = [statistics.stdev(values) / math.sqrt(len(values)) for values in (loads, use)]
            more = f"; exact {exact(trucks)[0]:.4f}, {exact(trucks)[1]:.4f}" if service is None else ""
            print(f"{title}, {trucks} trucks: {statistics.mean(loads):.3f} ± {spread[0]:.3f} loads an hour, paver in use {statistics.mean(use):.4f} ± {spread[1]:.4f}{more}")
