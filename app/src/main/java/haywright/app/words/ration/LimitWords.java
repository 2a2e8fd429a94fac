package haywright.app.words.ration;

import haywright.app.words.Show;
import haywright.cattle.need.Need;
import haywright.diet.DietRow;
import haywright.diet.DietRow.Sense;
import haywright.diet.LeftOut;
import haywright.diet.RowId;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.ration.HandMix;
import haywright.ration.LimitAnswer;
import haywright.ration.NoRation;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;

/** What the rows of a ration say, in the rancher's words: on pages, papers and in a terminal alike. */
public final class LimitWords {
    private static final double RATIO_STEP = 0.1;

    /** Percent under which nobody would call them hungry; common practice, no source. */
    private static final double HUNGRY = 5;

    private LimitWords() {}

    /** {@code 19.5 lb}, {@code 13.4 Mcal}, {@code 17.4 g}, {@code 60 %}, {@code 678 ppm}. */
    public static String amount(DietRow row, double value) {
        if (row.id().equals("mineral")) {
            return Show.number(Unit.OUNCE.fromBase(value / 1000), 1) + " oz";
        }
        return switch (row.unit()) {
            case KILOGRAM_A_DAY -> Show.number(Unit.POUND.fromBase(value), 2) + " lb";
            case GRAM_A_DAY -> Show.number(value, 1) + " g";
            case MEGACALORIE -> Show.number(value, 2) + " Mcal";
            case PERCENT -> Show.number(value, 1) + " %";
            case PPM -> Show.number(value, 0) + " ppm";
            default -> Show.number(value, 1);
        };
    }

    /** With the side: {@code at least 1.53 lb}. */
    public static String needed(DietRow row) {
        return (row.sense() == Sense.AT_LEAST ? "at least " : "at most ") + amount(row, row.limit());
    }

    /** Start of a sentence: {@code Protein}. */
    public static String start(DietRow row) {
        return Show.capital(row.name());
    }

    /** What a limit that costs money costs: {@code Protein decides. A tenth of a pound more would cost 4 ¢ a head.} */
    public static String tight(LimitAnswer limit) {
        var row = limit.row();
        var more = switch (row.unit()) {
            case KILOGRAM_A_DAY -> "A tenth of a pound";
            case GRAM_A_DAY -> "One gram";
            case MEGACALORIE -> "One Mcal";
            case PERCENT -> "One point";
            case PPM -> "A hundred ppm";
            default -> "One";
        };
        boolean least = row.sense() == Sense.AT_LEAST;
        if (row.unit() == Unit.NONE) { // a ratio
            return "A %s of %s in place of %s would %s %s per head per day."
                    .formatted(
                            least ? "ratio" : "limit",
                            amount(row, row.limit() + RATIO_STEP),
                            amount(row, row.limit()),
                            least ? "cost" : "save",
                            cents(limit.price() * RATIO_STEP));
        }
        return "%s %s would %s %s per head per day."
                .formatted(
                        more, least ? "more" : "more room", least ? "cost" : "save", cents(limit.price() * step(row)));
    }

    /** Whether a limit costs so much that it can be shown: at least 0.1 ¢ for what {@link #tight} says. */
    public static boolean isTight(LimitAnswer limit) {
        return limit.isTight() && Math.abs(100 * limit.price() * step(limit.row())) >= 0.05;
    }

    /** Whether a limit can be shown: one that nobody chose, is no danger and rounds to nothing says nothing. */
    public static boolean isSaid(LimitAnswer limit) {
        var row = limit.row();
        return !limit.isMet()
                || row.sense() == Sense.AT_LEAST
                || row.kind() == DietRow.Kind.CHOICE
                || row.kind() == DietRow.Kind.DANGER
                || !amount(row, row.limit()).equals(amount(row, 0));
    }

    private static double step(DietRow row) {
        return switch (row.unit()) {
            case KILOGRAM_A_DAY -> 0.1 * Unit.POUND.toBase(1);
            case PPM -> 100;
            case NONE -> RATIO_STEP;
            default -> 1;
        };
    }

    /** {@code 4 ¢}, {@code 0.3 ¢}. */
    private static String cents(double dollars) {
        double cents = 100 * dollars;
        return Show.number(cents, cents < 0.95 ? 1 : 0) + " ¢";
    }

    /**
     * What of these is not met, each thing once: crude protein, metabolizable and that which the rumen needs are one
     * protein to whoever feeds, and hungry is hungry. Of rows that say the same thing the one is said that is missed by most.
     */
    public static List<String> shortfalls(HandMix mix, List<LeftOut> leftOut) {
        var words = new ArrayList<String>();
        mix.notAllowed().forEach(left -> words.add(left.why()));
        words.addAll(missed(mix, leftOut));
        return words;
    }

    private static List<String> missed(HandMix mix, List<LeftOut> leftOut) {
        var worst = new LinkedHashMap<String, LimitAnswer>();
        for (var limit : mix.limits()) {
            if (!limit.isMet()) {
                worst.merge(thing(limit.row()), limit, (a, b) -> share(b) > share(a) ? b : a);
            }
        }
        return worst.values().stream()
                .map(limit -> isGrain(limit) ? tooMuchGrain(limit, mix) : shortfall(limit, leftOut))
                .distinct()
                .toList();
    }

    private static boolean isGrain(LimitAnswer limit) {
        return limit.row().id().startsWith("grain") && limit.row().sense() == Sense.AT_MOST;
    }

    /** In pounds as whoever feeds weighs them: {@code too much grain: 15.4 lb, at most 6.3 lb}. */
    private static String tooMuchGrain(LimitAnswer limit, HandMix mix) {
        double pounds = Unit.POUND.fromBase(mix.putOutPerKg(FeedClass.GRAIN));
        return "too much grain: %s lb put out, at most %s lb%s"
                .formatted(
                        Show.number(pounds * limit.supplied(), 1),
                        Show.number(pounds * limit.row().limit(), 1),
                        limit.row().id().equals("grain") ? "; it can kill" : " is usual beside hay");
    }

    private static String thing(DietRow row) {
        if (isHowFull(row)) {
            return "full";
        }
        return switch (row.id()) {
            case "cp", "cp_floor", "mp", "mp_rumen" -> "protein";
            case "grain", "grain_careful" -> "grain";
            default -> row.id();
        };
    }

    private static double share(LimitAnswer limit) {
        double size = Math.abs(limit.row().limit());
        return size == 0 ? Double.MAX_VALUE : Math.abs(limit.margin()) / size;
    }

    /** Short by how much: {@code short on protein by 0.3 lb}; {@code 2 % too much grain}. */
    private static String shortfall(LimitAnswer limit) {
        var row = limit.row();
        if (row.id().equals("mineral")) {
            return limit.supplied() == 0
                    ? "without a mineral"
                    : "short on mineral: %s of at least %s"
                            .formatted(amount(row, limit.supplied()), amount(row, row.limit()));
        }
        if (isHowFull(row)) {
            double less = Math.max(1, 100 * share(limit));
            return "%s: %s %% less than fills them"
                    .formatted(less < HUNGRY ? "not quite full" : "they’ll be hungry", Show.number(less, 0));
        }
        if (row.id().equals("fill")) {
            return "%s %% more than they can hold".formatted(Show.number(Math.max(1, 100 * share(limit)), 0));
        }
        var by = amount(row, Math.abs(limit.margin()));
        if (row.sense() == Sense.AT_MOST) {
            return "%s too much: %s".formatted(by, row.name());
        }
        if (row.kind() == DietRow.Kind.CHOICE) {
            return "you asked for %s of %s".formatted(typed(row), row.name());
        }
        return switch (row.id()) {
            case "growth" -> "not enough energy to gain on (%s short)".formatted(by);
            case "mp", "mp_rumen" ->
                "short on protein by %s lb"
                        .formatted(Show.number(Unit.POUND.fromBase(Math.abs(limit.margin()) / 1000), 2));
            case "ca_p_low" -> "too little calcium beside phosphorus";
            case "ca_p_high" -> "too little phosphorus beside calcium";
            default -> "short on %s by %s".formatted(row.name(), by);
        };
    }

    /** The same, where a feed that was asked for may be among those left out. */
    private static String shortfall(LimitAnswer limit, List<LeftOut> leftOut) {
        return leftOut.stream()
                .filter(out -> limit.row().kind() == DietRow.Kind.CHOICE
                        && limit.row().id().endsWith("_" + out.feed().id()))
                .findFirst()
                .map(out -> "you asked for %s; it’s %s"
                        .formatted(out.feed().name(), isUntested(out) ? "not tested" : "not to be fed"))
                .orElseGet(() -> shortfall(limit));
    }

    private static boolean isUntested(LeftOut out) {
        return out.feed().nitrateDanger() && !out.feed().composition().knows(Analyte.NO3N);
    }

    /** As somebody would say what they asked for: {@code 8 lb}. */
    private static String typed(DietRow row) {
        return amount(row, row.limit()).replaceAll("\\.0+(?= )", "");
    }

    /** A floor whose own figure, a percent of itself, says nothing to anybody. */
    private static boolean isHowFull(DietRow row) {
        return switch (row.id()) {
            case "forage_floor", "forage_least", "hay_least", "intake" -> true;
            default -> false;
        };
    }

    /** One limit of a conflict, as a sentence. */
    public static String inTheWay(DietRow row, NoRation answer) {
        var out = answer.diet().leftOut().stream()
                .filter(l -> row.id().endsWith("_" + l.feed().id()))
                .findFirst();
        if (out.isPresent()) {
            return "You wanted %s of %s. Don’t feed it yet: %s."
                    .formatted(
                            typed(row),
                            row.name(),
                            isUntested(out.get())
                                    ? "it’s not tested for nitrate"
                                    : out.get().why());
        }
        if (row.of() instanceof RowId.OnHand) {
            return "There is only so much %s: %s per head per day, dry."
                    .formatted(row.name(), amount(row, row.limit()));
        }
        return switch (row.id()) {
            case "fill" ->
                answer.lifts().stream()
                        .filter(lift -> lift.row().id().equals("fill"))
                        .findFirst()
                        .map(lift ->
                                "These feeds are too poor for them: to get enough of the mix they would have to eat %s %% more than they can hold."
                                        .formatted(Show.number(100 * (lift.to() / row.limit() - 1), 0)))
                        .orElse("They can hold only so much of these feeds.");
            case "eaten_least", "eaten_most" ->
                "Free choice they eat what they want of the forage, no less and no more.";
            case "forage_floor", "forage_least" -> "They need enough hay, silage or straw to be full.";
            case "hay_least" -> "They need some hay or silage every day, whatever else is short.";
            case "intake" -> "They need enough feed in all to be full.";
            case "growth" ->
                "A gain of %s needs %s of energy over maintenance."
                        .formatted(gain(answer.diet().need().gain()), amount(row, row.limit()));
            case "forage" -> "Forage must be %s of the ration, for the rumen.".formatted(needed(row));
            case "grain" -> "Grain may be %s per head per day.".formatted(needed(row));
            case "straw" ->
                row.limit() == 0
                        ? "No straw for these cattle."
                        : "Straw may be %s per head per day.".formatted(needed(row));
            case "nitrate" -> "Nitrate in the ration must stay under %s.".formatted(amount(row, row.limit()));
            default ->
                row.kind() == DietRow.Kind.CHOICE
                        ? "You want %s of %s per head per day.".formatted(needed(row), row.name())
                        : "%s must be %s.".formatted(start(row), needed(row));
        };
    }

    /** Every single change that would let a ration exist; where a wanted feed may not be fed, what would let it in. */
    public static List<String> lifts(NoRation answer, Need need) {
        var words = new ArrayList<String>();
        for (var out : answer.diet().leftOut()) {
            if (answer.conflicts().stream()
                    .anyMatch(c -> c.row().id().endsWith("_" + out.feed().id()))) {
                words.add(out.fix());
            }
        }
        answer.tests()
                .forEach(test ->
                        words.add("Test %s for nitrate: if it is safe, a ration costs about %s per head per day."
                                .formatted(test.feed().name(), Show.dollars(test.cost()))));
        answer.lifts().stream().filter(NoRation.Lift::isPossible).forEach(lift -> words.add(lift(lift, need)));
        return words;
    }

    private static String lift(NoRation.Lift lift, Need need) {
        var row = lift.row();
        var costs = "then a ration costs about %s per head per day".formatted(Show.dollars(lift.cost()));
        if (row.id().equals("growth")) {
            return "Aim for %s instead of %s: %s.".formatted(gain(need.gainOn(lift.to())), gain(need.gain()), costs);
        }
        if (row.of() instanceof RowId.OnHand) {
            return "Get more %s, %s per head per day, dry, instead of %s: %s."
                    .formatted(row.name(), amount(row, lift.to()), amount(row, row.limit()), costs);
        }
        if (row.kind() == DietRow.Kind.CHOICE && row.sense() == Sense.AT_LEAST && lift.to() < 1e-6) {
            return "Do without %s: %s.".formatted(row.name(), costs);
        }
        return "%s %s instead of %s: %s."
                .formatted(
                        start(row),
                        needed(row).replace(amount(row, row.limit()), amount(row, lift.to())),
                        amount(row, row.limit()),
                        costs);
    }

    /** {@code 1.5 lb a day}. */
    private static String gain(double kg) {
        return Show.number(Unit.POUND.fromBase(kg), 1) + " lb a day";
    }
}
