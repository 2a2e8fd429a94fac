package haywright.feeding.hay;

/**
 * What is done where hay is short; each makes no more hay missing than without it.
 *
 * @param rings whether hay and straw are fed in rings
 * @param sold head of open, old and late cows sold
 * @param straw whether straw and cake go to dry mature cows that are not thin
 * @param limited whether these get the least hay that published advice has
 * @param away head of them that feed elsewhere
 * @param awayDays for how many days, from today
 * @param bredSold head of bred cows sold
 * @param bought whether hay and silage that are listed for sale are bought
 */
record HayPlan(
        boolean rings, int sold, boolean straw, boolean limited, int away, int awayDays, int bredSold, boolean bought) {
    static final HayPlan NOTHING = new HayPlan(false, 0, false, false, 0, 0, 0, false);

    HayPlan buying() {
        return new HayPlan(rings, sold, straw, limited, away, awayDays, bredSold, true);
    }

    HayPlan withRings() {
        return new HayPlan(true, sold, straw, limited, away, awayDays, bredSold, bought);
    }

    HayPlan selling(int head) {
        return new HayPlan(rings, head, straw, limited, away, awayDays, bredSold, bought);
    }

    HayPlan withStraw() {
        return new HayPlan(rings, sold, true, limited, away, awayDays, bredSold, bought);
    }

    HayPlan withLimit() {
        return new HayPlan(rings, sold, straw, true, away, awayDays, bredSold, bought);
    }

    HayPlan sending(int head, int days) {
        return new HayPlan(rings, sold, straw, limited, head, days, bredSold, bought);
    }

    HayPlan sellingBred(int head) {
        return new HayPlan(rings, sold, straw, limited, away, awayDays, head, bought);
    }
}
