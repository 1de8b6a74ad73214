"""What the plan of a clinic answers to the questions of lesson 11: a function a question, its choice counted from 0."""


def invented_clinic(**changed):
    from bowlcore.coaching.clinic import plan_clinic
    from bowlcore.coaching.clinic_evening import ClinicEvening
    from bowlcore.coaching.clinic_people import INVENTED, read_people

    return plan_clinic(
        read_people(INVENTED), ClinicEvening(**{"lanes": 2, "minutes": 90, "coaches": 3} | changed)
    )


def balls_an_evening():
    balls = invented_clinic().balls_each
    return [12, 30, 60].index(min((12, 30, 60), key=lambda about: abs(about - balls)))


def what_a_child_lifts():
    lifted_kg = 12 * 8 * 0.45359237
    return [10, 45, 100].index(min((10, 45, 100), key=lambda about: abs(about - lifted_kg)))


def a_lane_less():
    for way, more in enumerate(({"coaches": 4}, {"talk_min": 5})):
        try:
            invented_clinic(lanes=1, **more)
        except ValueError as problem:
            assert "2 lanes; or " in str(problem)
        else:
            return way
    return 2


def a_tingling_thumb():
    from bowlcore.coaching.clinic_words import SAFETY

    return 1 if "tingling? Then that is all for today" in SAFETY["change"] else 0
