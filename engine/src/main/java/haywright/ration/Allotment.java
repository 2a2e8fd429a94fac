package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietBlock;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import haywright.diet.Sureness;
import haywright.lp.LinearProgram;
import haywright.lp.Optimum;
import haywright.lp.ProgramBuilder;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Who eats which of the feeds that all groups share, over the days ahead, where hay is short: the least hay or silage that is
 * missing, of dry matter, and of such ways the one that keeps them fullest and is cheap. One program of every group's diet in every stretch of days, with what
 * lies on the ranch and what can be had of each feed. Hay and silage of the ranch are taken beyond their end at one price,
 * other feeds at a much higher one, so that more feed, fewer head or a looser limit never makes more of it missing. Everybody
 * is fed: a need that the feeds cannot meet is missed by as little as can be. As expected figures have it, and needs as surely
 * as their question has them, by its limits as they stand.
 */
public final class Allotment {
    /** Shares of what there is below which nothing is missing: what the solver's exactness leaves. */
    private static final double NOTHING = 1e-6;

    /** Share of a need below which it is met: what the solver's exactness leaves. */
    private static final double LEAST_UNMET = 1e-4;

    /** Dollars a kg of dry matter of hay that is missing, where that is what is to be least: dearer than any feed. */
    private static final double DEAREST = 20;

    /** Times that of any other feed beyond its end: only where nothing else meets a need at all. */
    private static final double OTHERS = 10;

    /** Dollars a head and day that a need costs of which nothing is met: ten times a day's hay at that price. */
    private static final double UNMET = 4000;

    private static final int TENTHS = 10;

    /**
     * Dollars a head and day that the first tenth of a floor that is only wished is dearer by than none of it, were it all:
     * above what straw costs, far below hay that is missing (judgment).
     */
    private static final double HUNGRY = 1;

    private final List<Eater> eaters;
    private final Map<String, Double> kgMissing;
    private final List<Eaten> eaten;

    /**
     * @param question of one head on a day of it
     * @param share of the eater's head that is there in these days
     * @param held whose dangers hold as well: others of the group, hay of which more is lost
     * @param wished whose floors that are absolute are missed by as little as can be, every day alike, though they need
     *     not be met
     */
    public record Stretch(
            int days,
            LeastCostRation question,
            double share,
            @Nullable LeastCostRation held,
            @Nullable LeastCostRation wished) {
        /** With all head there. */
        public Stretch(int days, LeastCostRation question) {
            this(days, question, 1, null, null);
        }
    }

    /** @param stretches one after the other, the same days for every eater */
    public record Eater(String id, int head, List<Stretch> stretches) {
        public Eater {
            stretches = List.copyOf(stretches);
        }
    }

    /**
     * What an eater takes in a stretch.
     *
     * @param stretch its number, from 0
     * @param headDays head times days of it
     * @param feeds that are taken, and kg as fed of each that all its head are put out in all its days
     * @param unmet the share of each need that these feeds cannot meet, by row id; empty where they meet all
     */
    public record Eaten(
            String eater, int stretch, double headDays, Map<PricedFeed, Double> feeds, Map<String, Double> unmet) {
        public Eaten {
            feeds = Collections.unmodifiableMap(new LinkedHashMap<>(feeds));
            unmet = Collections.unmodifiableMap(new LinkedHashMap<>(unmet));
        }
    }

    private record Stock(int row, int beyond, PricedFeed feed) {}

    private Allotment(List<Eater> eaters, Map<String, Double> kgMissing, List<Eaten> eaten) {
        this.eaters = List.copyOf(eaters);
        this.kgMissing = Collections.unmodifiableMap(kgMissing);
        this.eaten = List.copyOf(eaten);
    }

    /** Empty where no group is there. */
    public static Optional<Allotment> leastMissing(List<Eater> eaters) {
        var program = LinearProgram.minimize();
        var stocks = new LinkedHashMap<String, Stock>();
        var placed = new ArrayList<Placed>();
        for (var eater : eaters) {
            for (int t = 0; t < eater.stretches().size(); t++) {
                if (eater.stretches().get(t).share() > 0) {
                    placed.add(place(program, eater, t));
                }
            }
        }
        if (placed.isEmpty()) {
            return Optional.empty();
        }
        placed.forEach(block -> block.draw(program, stocks));
        try (var session = program.build().open()) {
            if (!(session.solve() instanceof Optimum optimum)) {
                return Optional.empty();
            }
            var missing = new LinkedHashMap<String, Double>();
            stocks.forEach((id, stock) -> {
                double beyond = optimum.value(stock.beyond());
                if (beyond > NOTHING * Math.max(1, stock.feed().kgAtHand())) {
                    missing.put(id, beyond);
                }
            });
            return Optional.of(new Allotment(
                    eaters,
                    missing,
                    placed.stream().map(block -> block.eaten(optimum)).toList()));
        }
    }

    private static Placed place(ProgramBuilder program, Eater eater, int t) {
        var stretch = eater.stretches().get(t);
        var question = stretch.question();
        double headDays = eater.head() * stretch.share() * stretch.days();
        var block = new DietBlock(question.diet(), Sureness.EXPECTED);
        var in = program.in(eater.id() + "/" + t);
        var feeds = question.admitted(block.diet());
        var at = block.addTo(in, RationProgram.costs(feeds), GrowthRow.ID, headDays);
        var held = stretch.held();
        if (held != null) {
            hold(in, held, feeds, at, headDays);
        }
        var wished = stretch.wished();
        if (wished != null) {
            wish(in, wished, block.diet(), at, headDays);
        }
        var unmet = unmet(in, block, at);
        sure(in, question, block.diet(), at, unmet, headDays);
        return new Placed(eater, t, headDays, feeds, at, unmet);
    }

    /**
     * Needs that a question keeps more surely than even odds, each feed counted with its own doubt taken off: a little more
     * than all doubts together ask of a mix.
     */
    private static void sure(
            ProgramBuilder in,
            LeastCostRation question,
            Diet diet,
            DietBlock.Placed at,
            Map<DietRow, Integer> unmet,
            double headDays) {
        unmet.forEach((row, column) -> {
            double z = question.sureness().z(row);
            if (z > 0) {
                int sure = in.row(row.id() + " sure", headDays * row.rightHandSide(), Double.POSITIVE_INFINITY);
                for (int i = 0; i < at.feed().length; i++) {
                    double doubt = row.spread(diet.feeds().get(i)).sd();
                    in.term(sure, at.feed()[i], row.coefficients()[i] - z * doubt);
                }
                in.term(sure, column, 1);
            }
        });
    }

    /** Each tenth of a floor that is missed costs more than the one before it, so that no day is hungrier than another. */
    private static void wish(
            ProgramBuilder in, LeastCostRation other, Diet held, DietBlock.Placed at, double headDays) {
        var diet = other.diet();
        var ids = held.feeds().stream().map(Feed::id).toList();
        for (var row : diet.rows()) {
            boolean isFloor = row.sense() == DietRow.Sense.AT_LEAST && !row.isRatio() && row.limit() > 0;
            if (isFloor && held.rows().stream().noneMatch(one -> one.of().equals(row.of()))) {
                int wish = in.row(row.id() + " wished", headDays * row.rightHandSide(), Double.POSITIVE_INFINITY);
                for (int i = 0; i < diet.feeds().size(); i++) {
                    int place = ids.indexOf(diet.feeds().get(i).id());
                    if (place >= 0) {
                        in.term(wish, at.feed()[place], row.coefficients()[i]);
                    }
                }
                for (int tenth = 1; tenth <= TENTHS; tenth++) {
                    double most = headDays * row.limit() / TENTHS;
                    int missed = in.column(
                            row.id() + " missed " + tenth,
                            tenth * HUNGRY / row.limit(),
                            0,
                            tenth == TENTHS ? Double.POSITIVE_INFINITY : most);
                    in.term(wish, missed, 1);
                }
            }
        }
    }

    /** What is put out keeps the dangers of another question too, with what is lost by that. */
    private static void hold(
            ProgramBuilder in, LeastCostRation other, List<PricedFeed> feeds, DietBlock.Placed at, double headDays) {
        var diet = other.diet();
        var known = other.admitted(diet);
        var place = new int[feeds.size()];
        var eaten = new double[feeds.size()];
        for (int i = 0; i < place.length; i++) {
            var id = feeds.get(i).feed().id();
            place[i] = -1;
            for (int k = 0; k < known.size(); k++) {
                if (known.get(k).feed().id().equals(id)) {
                    place[i] = k;
                    eaten[i] = known.get(k).eaten(feeds.get(i).putOut(1));
                }
            }
            if (place[i] < 0) {
                in.term(in.row("held " + id, 0, 0), at.feed()[i], 1);
            }
        }
        for (var row : diet.rows()) {
            if (row.kind() == DietRow.Kind.DANGER) {
                var terms = new double[place.length];
                for (int i = 0; i < place.length; i++) {
                    terms[i] = place[i] < 0 ? 0 : eaten[i] * row.coefficients()[place[i]];
                }
                double right = headDays * row.rightHandSide();
                in.row(row.id() + " held", row.lower(right), row.upper(right), at.feed(), terms);
            }
        }
    }

    /** A column beside each need that more feed meets, for what is not met of it. */
    private static Map<DietRow, Integer> unmet(ProgramBuilder in, DietBlock block, DietBlock.Placed at) {
        var columns = new LinkedHashMap<DietRow, Integer>();
        for (var row : block.diet().rows()) {
            Integer index = at.row().get(row.of());
            if (index != null && row.sense() == DietRow.Sense.AT_LEAST && !row.isRatio() && row.limit() > 0) {
                int column = in.column(row.id() + " unmet", UNMET / row.limit(), 0, Double.POSITIVE_INFINITY);
                in.term(index, column, 1);
                columns.put(row, column);
            }
        }
        return columns;
    }

    private record Placed(
            Eater eater,
            int stretch,
            double headDays,
            List<PricedFeed> feeds,
            DietBlock.Placed block,
            Map<DietRow, Integer> unmet) {
        /** Takes what is put out off the stock of each feed that has an end. */
        void draw(ProgramBuilder program, Map<String, Stock> stocks) {
            for (int i = 0; i < feeds.size(); i++) {
                var feed = feeds.get(i);
                if (Double.isFinite(feed.kgAtHand())) {
                    var stock = stocks.computeIfAbsent(feed.feed().id(), id -> open(program, feed));
                    program.term(stock.row(), block.feed()[i], feed.putOut(1));
                }
            }
        }

        private static Stock open(ProgramBuilder program, PricedFeed feed) {
            var id = feed.feed().id();
            int row = program.row("at hand " + id, Double.NEGATIVE_INFINITY, feed.kgAtHand());
            int beyond = program.column("beyond " + id, beyond(feed), 0, Double.POSITIVE_INFINITY);
            program.term(row, beyond, -1);
            return new Stock(row, beyond, feed);
        }

        /** Dollars a kg as fed beyond its end. */
        private static double beyond(PricedFeed feed) {
            double dry = DEAREST * feed.dryMatterPercent() / 100;
            return feed.own() && feed.isHayOrSilage() ? dry : OTHERS * dry;
        }

        Eaten eaten(Optimum optimum) {
            var kg = new LinkedHashMap<PricedFeed, Double>();
            for (int i = 0; i < feeds.size(); i++) {
                double putOut = feeds.get(i).putOut(optimum.value(block.feed()[i]));
                if (putOut > NOTHING * headDays) {
                    kg.put(feeds.get(i), putOut);
                }
            }
            var missed = new LinkedHashMap<String, Double>();
            unmet.forEach((row, column) -> {
                double share = optimum.value(column) / (row.limit() * headDays);
                if (share > LEAST_UNMET && row.kind() != DietRow.Kind.CHOICE) {
                    missed.put(row.id(), share);
                }
            });
            return new Eaten(eater.id(), stretch, headDays, kg, missed);
        }
    }

    /** kg as fed that are missing of what there is, by feed; empty where all reaches. */
    public Map<String, Double> missing() {
        return kgMissing;
    }

    /** What every eater takes in every stretch. */
    public List<Eaten> eaten() {
        return eaten;
    }
}
