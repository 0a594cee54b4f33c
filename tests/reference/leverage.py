"""An independent reference for weight on the hands and turning loads.

Reads JSON, one posture a line:
    {"body": "male" | "female", "touches": [...], "shoulder": deg, "elbow": deg, "hip": deg,
     "knee": deg, "hands_at": cm, "feet_at": cm or null}
Writes JSON, one answer a line:
    {"hands": share or null, "shoulder": body weight x cm, "hip": ...} or {"open": cm} or {"tips": cm}

Written from the published table and from statics, not from the program: the body faces the other way, points are complex
numbers, contacts are closed and feet balanced by bisection, and moments are taken over the trunk's side of each joint wherever
all its forces are known.

Source: de Leva 1996, J Biomech 29(9):1223-1230, Table 4; Drillis and Contini 1966 for the height of the ankle.
"""

import cmath
import json
import math
import sys

# Mass in percent of the body, length in mm, centre in percent of the length; a pair of limbs counts twice.
TABLE = {
    "male": {
        "stature": 1741.0,
        "head": (6.94, 242.9, 50.02),
        "cervicale": 603.3,
        "mid shoulders": 515.5,
        "suprasternale": 531.9,
        "upper": (15.96, 170.7, 29.99),
        "middle": (16.33, 215.5, 45.02),
        "lower": (11.17, 145.7, 61.15),
        "upper arm": (2.71, 281.7, 57.72),
        "forearm": (1.62, 268.9, 45.74),
        "hand": (0.61, 86.2, 79.00),
        "thigh": (14.16, 422.2, 40.95),
        "shank": (4.33, 440.3, 43.95),
        "foot": (1.37, 258.1, 44.15),
    },
    "female": {
        "stature": 1735.0,
        "head": (6.68, 243.7, 48.41),
        "cervicale": 614.8,
        "mid shoulders": 497.9,
        "suprasternale": 529.3,
        "upper": (15.45, 142.5, 20.77),
        "middle": (14.65, 205.3, 45.12),
        "lower": (12.47, 181.5, 49.20),
        "upper arm": (2.55, 275.1, 57.54),
        "forearm": (1.38, 264.3, 45.59),
        "hand": (0.56, 78.0, 74.74),
        "thigh": (14.78, 368.5, 36.12),
        "shank": (4.81, 438.6, 43.52),
        "foot": (1.29, 228.3, 40.14),
    },
}
WRIST, BALL, KNEE, ANKLE, BACK, WALL = 0.018, 0.012, 0.03, 0.039, 0.06, 0.18
ANKLE_ALONG, BALL_ALONG = 0.25, 0.72


def way(degrees):
    return cmath.exp(1j * math.radians(degrees))


def mean(masses):
    total = sum(mass for mass, _ in masses)
    return total, sum(mass * place for mass, place in masses) / total


def bisect(function, low, high):
    """A root between two places where the function has different signs."""
    sign = function(low) > 0
    for _ in range(200):
        middle = (low + high) / 2
        if (function(middle) > 0) == sign:
            low = middle
        else:
            high = middle
    return (low + high) / 2


class Body:
    """A body laid out with its shoulder at 0, its hips on the positive real axis, and its front on the positive imaginary side."""

    def __init__(self, ask):
        t = TABLE[ask["body"]]
        self.cm = t["stature"] / 10
        whole = sum(t[k][0] for k in ("head", "upper", "middle", "lower"))
        whole += 2 * sum(t[k][0] for k in ("upper arm", "forearm", "hand", "thigh", "shank", "foot"))
        self.table, self.whole = t, whole

        def part(name, start, direction, pair=2):
            mass, length, centre = t[name]
            end = start + direction * length / 10
            self.masses[name] = (pair * mass / whole, start + direction * length * centre / 1000)
            return end

        self.masses = {}
        self.shoulder = 0j
        # The trunk's upper part begins above the line of the shoulders, at the suprasternale.
        line = part("upper", -(t["suprasternale"] - t["mid shoulders"]) / 10, 1, 1)
        line = part("middle", line, 1, 1)
        self.hip = part("lower", line, 1, 1)
        neck = -(t["cervicale"] - t["mid shoulders"]) / 10
        mass, length, centre = t["head"]
        self.masses["head"] = (mass / whole, neck - length * (1 - centre / 100) / 10)
        arm = way(ask["shoulder"])
        fore = arm * way(180 - ask["elbow"])
        elbow = part("upper arm", 0, arm)
        self.wrist = part("forearm", elbow, fore)
        self.knuckles = part("hand", self.wrist, fore)
        thigh = way(180 - ask["hip"])
        shank = thigh / way(180 - ask["knee"])
        self.knee = part("thigh", self.hip, thigh)
        self.ankle = part("shank", self.knee, shank)
        self.place_foot(shank * 1j)

    def place_foot(self, forward):
        """A foot whose sole points forward, the body facing to the right of the way down."""
        mass, length, centre = self.table["foot"]
        down = forward / 1j
        heel = self.ankle + down * ANKLE * self.cm - forward * ANKLE_ALONG * length / 10
        self.ball = heel + forward * BALL_ALONG * length / 10
        self.toes = heel + forward * length / 10
        middle = heel + forward * length * centre / 1000 - down * ANKLE * self.cm / 2
        self.masses["foot"] = (2 * mass / self.whole, middle)

    def turn(self, by, about, to):
        for name, value in list(vars(self).items()):
            if isinstance(value, (complex, float)) and name not in ("cm", "whole"):
                setattr(self, name, to + (value - about) * by)
        self.masses = {k: (m, to + (p - about) * by) for k, (m, p) in self.masses.items()}

    def parts(self, *names):
        return [self.masses[n] for n in names]


ARMS = ("upper arm", "forearm", "hand")
LEGS = ("thigh", "shank", "foot")
TRUNK = ("head", "upper", "middle", "lower")


class Fails(Exception):
    pass


def close(body, one, other, low, high, above):
    """The turn that puts two places at two heights."""
    reach = abs(other - one)
    if abs(high - low) > reach:
        raise Fails({"open": abs(high - low) - reach})
    start = (other - one) / reach
    centre = mean(body.masses.values())[1]

    def height(angle):
        return reach * math.sin(angle) - (high - low)

    best = None
    for span in ((-math.pi / 2, math.pi / 2), (math.pi / 2, 3 * math.pi / 2)):
        by = cmath.exp(1j * bisect(height, *span)) / start
        rises = ((centre - one) * by).imag
        if best is None or (rises > best[0]) == above:
            best = (rises, by)
    body.turn(best[1], one, 1j * low)


def hold(ask):
    """Within 30 degrees of the trunk the straight line from shoulder to hand makes a support of a grip."""
    touches = ask["touches"]
    if not any(t in touches for t in ("bar", "bars", "rings")):
        return "above"
    if abs(ask["shoulder"] + (180 - ask["elbow"]) / 2) <= 30:
        return "upright"
    return "above" if "bars" in touches and ask["shoulder"] <= 90 else "below"


def answer(ask):
    body = Body(ask)
    cm, touches = body.cm, ask["touches"]
    grip = any(t in touches for t in ("bar", "bars", "rings"))
    hand, hand_height = (body.knuckles, 0) if grip else (body.wrist, WRIST * cm)
    hand_height += ask["hands_at"]
    hands = grip or "hands" in touches
    if hands and not grip:
        # A hand on the floor is weighed where it presses.
        body.masses["hand"] = (body.masses["hand"][0], body.wrist)
    foot_height = ask["feet_at"] or 0
    if "knees" in touches:
        foot, name, foot_height = body.knee, "knee", foot_height + KNEE * cm
    elif "wall" in touches:
        foot, name = body.toes, "toes"
    elif "toes" in touches:
        foot, name, foot_height = body.ball, "ball", foot_height + BALL * cm
    else:
        foot, name = None, None
    if "wall" in touches:
        reach = abs(foot - hand)
        if ask["feet_at"] is None:
            slope = math.acos(min(1, WALL * cm / reach))
        elif abs(foot_height - hand_height) > reach:
            raise Fails({"open": abs(foot_height - hand_height) - reach})
        else:
            slope = math.asin((foot_height - hand_height) / reach)
        # Facing the other way, the wall is to the left.
        body.turn(-cmath.exp(-1j * slope) / ((foot - hand) / reach), hand, 1j * hand_height)
    elif hands and foot is not None:
        close(body, hand, foot, hand_height, foot_height, hold(ask) != "below")
    elif hands:
        line = mean(body.masses.values())[1] - hand
        by = 1j / (line / abs(line))
        # Upright: the shoulders above the hips.
        if hold(ask) == "below" or (hold(ask) == "upright" and (-body.hip * by).imag <= 0):
            by = -by
        body.turn(by, hand, 1j * hand_height)
    elif "back" in touches:
        body.turn(1, -1j * BACK * cm, 0)
    elif "knees" in touches:
        line = mean(body.masses.values())[1] - foot
        body.turn(1j / (line / abs(line)), foot, 1j * foot_height)
    else:
        stand_on_flat_feet(body)
    centre = mean(body.masses.values())[1]
    return loads(body, ask, hands, grip, name, centre)


def stand_on_flat_feet(body):
    """Lean about the ankle until the centre of mass is over the middle between heel and ball."""
    legless = [body.masses[k] for k in body.masses if k != "foot"]
    mass, centre = mean(legless)
    line = (centre - body.ankle) / abs(centre - body.ankle)
    ankle = body.ankle
    mass_foot, length, along = body.table["foot"]
    flat = (along / 100 - ANKLE_ALONG) * length / 10
    middle = (BALL_ALONG / 2 - ANKLE_ALONG) * length / 10
    share = 2 * mass_foot / body.whole

    def off(lean):
        return mass * abs(centre - ankle) * math.cos(lean) + share * flat - middle

    lean = bisect(off, 0, math.pi)
    body.turn(cmath.exp(1j * lean) / line, ankle, 1j * ANKLE * body.cm)
    body.place_foot(1 + 0j)


def loads(body, ask, hands, grip, name, centre):
    touches = ask["touches"]
    hand = body.knuckles if grip else body.wrist
    foot = getattr(body, name) if name else None
    forces = []
    if "wall" in touches:
        push = (centre.real - hand.real) / (foot.imag - hand.imag)
        if push > 0:
            raise Fails({"tips": centre.real - hand.real})
        forces = [("hands", hand, push + 1j), ("feet", foot, -push + 0j)]
    elif hands and foot is not None:
        share = (foot.real - centre.real) / (foot.real - hand.real)
        if not -1e-9 <= share <= 1 + 1e-9:
            raise Fails({"tips": min(abs(centre.real - hand.real), abs(centre.real - foot.real))})
        forces = [("hands", hand, 1j * share), ("feet", foot, 1j * (1 - share))]
    elif hands:
        forces = [("hands", hand, 1j)]
    elif "back" not in touches:
        forces = [("feet", centre.real + 0j, 1j)]

    def moment(about, place, force):
        return ((place - about).conjugate() * force).imag

    def side(about, parts, ends):
        total = sum(moment(about, place, -1j * mass) for mass, place in parts)
        return abs(total + sum(moment(about, at, force) for end, at, force in forces if end in ends))

    if "back" in touches:
        shoulder, hip = side(body.shoulder, body.parts(*ARMS), ()), side(body.hip, body.parts(*LEGS), ())
    else:
        shoulder = side(body.shoulder, body.parts(*TRUNK, *LEGS), ("feet",))
        hip = side(body.hip, body.parts(*TRUNK, *ARMS), ("hands",))
    return {
        "hands": next((force.imag for end, _, force in forces if end == "hands"), None),
        "shoulder": shoulder,
        "hip": hip,
    }


def main():
    for text in sys.stdin:
        ask = json.loads(text)
        try:
            out = answer(ask)
        except Fails as fails:
            out = fails.args[0]
        print(json.dumps(out))


if __name__ == "__main__":
    main()
