package haywright.match;

import haywright.cattle.herd.Group;
import haywright.cattle.need.Need;
import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.Sureness;
import haywright.outlook.HerdWeather;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.ration.JointChance;
import haywright.ration.LeastCostRation;
import haywright.ration.NoRation;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import haywright.ration.UsualMineral;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Lots against groups at each stage: a lot alone, with a loose mineral and nothing else, carries the group for so many days,
 * or it is short by so much of something, or it may not be fed. By expected figures, in usual weather.
 *
 * @param cells by group, stage and lot, in the ranch's order
 */
public record CarryChart(List<Cell> cells) {
    private static final double PERCENT = 100;
    private static final int LATE_GESTATION_DAYS = 30;

    /** What hay is fed for; a mineral brings the rest. */
    private static final Set<String> BROUGHT = Set.of("nem", "cp", "cp_floor", "rdp", "mp");

    /** As one says it before a stack: which of the ways to count protein it was stands on the bench. */
    private static final Map<String, String> PLAIN = Map.of(
            "nem", "energy", "cp", "protein", "cp_floor", "protein", "rdp", "protein for the rumen", "mp", "protein");

    private static final int AFTER_CALVING_DAYS = 30;

    public CarryChart {
        cells = List.copyOf(cells);
    }

    /** A time at which a group is looked at. */
    public enum Stage {
        NOW("now"),
        BEFORE_CALVING("a month before calving"),
        AFTER_CALVING("a month after calving begins");

        private final String words;

        Stage(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * One lot before one group.
     *
     * @param feed id of the lot; two may bear one name
     * @param groupId of the group, likewise
     * @param days that all of the lot would carry all of the group as it is on that day; empty where it does not
     * @param shortOf what it is short of, by name; empty where it carries them or may not be fed
     * @param shortPercent of the need, when they are full of it
     * @param danger why it may not be fed; empty where it may
     * @param surePercent in which all needs are met, over the ways that the lot may be made; 0 where it does not carry them
     */
    public record Cell(
            String feed,
            UUID groupId,
            String lot,
            String group,
            Stage stage,
            LocalDate day,
            OptionalDouble days,
            Optional<String> shortOf,
            double shortPercent,
            Optional<String> danger,
            double surePercent) {
        public boolean carries() {
            return days.isPresent();
        }
    }

    /** Every lot of hay, silage and straw that can be carried to cattle. */
    public static CarryChart of(Yard yard) {
        var lots = yard.feeds().stream()
                .filter(feed -> feed.own()
                        && feed.kgAtHand() > 0
                        && feed.feed().feedClass().isForage())
                .toList();
        var mineral = yard.feeds().stream()
                .filter(feed -> feed.feed().isLooseMineral())
                .findFirst();
        var weather = new HerdWeather(yard.ranch().settings());
        var cells = new ArrayList<Cell>();
        for (var group : yard.ranch().groups().values()) {
            for (var stage : Stage.values()) {
                day(group, stage, yard).ifPresent(day -> {
                    var need = weather.need(group, day);
                    lots.forEach(lot -> cells.add(cell(yard, group, stage, day, need, lot, mineral)));
                });
            }
        }
        return new CarryChart(cells);
    }

    /** Ids of lots that may not be fed alone to some group, as of a nitrate over the safe line. */
    public Set<String> onlyMixed() {
        return cells.stream()
                .filter(cell -> cell.danger().isPresent())
                .map(Cell::feed)
                .collect(Collectors.toUnmodifiableSet());
    }

    /** Empty where the group has no such stage ahead of it before grass. */
    static Optional<LocalDate> day(Group group, Stage stage, Yard yard) {
        var first = group.firstCalving().filter(calving -> calving.isAfter(yard.day()));
        var turnout = yard.ranch().turnout();
        return switch (stage) {
            case NOW -> Optional.of(yard.day());
            case BEFORE_CALVING ->
                first.map(calving -> calving.minusDays(LATE_GESTATION_DAYS)).filter(day -> day.isAfter(yard.day()));
            case AFTER_CALVING ->
                first.map(calving -> calving.plusDays(AFTER_CALVING_DAYS))
                        .filter(day -> turnout == null || !day.isAfter(turnout));
        };
    }

    /** Of these feeds, a mineral beside, by expected figures. Wishes are for other feeds: asked is whether these are enough. */
    static LeastCostRation alone(Yard yard, Group group, List<PricedFeed> offered, Need need) {
        var asked = yard.question(group, UsualMineral.beside(offered), need);
        return new LeastCostRation(
                asked.offered(),
                need,
                asked.options().with(List.of()),
                Sureness.EXPECTED,
                LeastCostRation.Amounts.EXACT);
    }

    private static Cell cell(
            Yard yard,
            Group group,
            Stage stage,
            LocalDate day,
            Need need,
            PricedFeed lot,
            Optional<PricedFeed> mineral) {
        var offered = new ArrayList<>(List.of(lot));
        mineral.ifPresent(offered::add);
        var alone = alone(yard, group, offered, need);
        var name = lot.feed().name();
        var out = alone.diet().leftOut().stream()
                .filter(left -> left.feed().id().equals(lot.feed().id()))
                .findFirst();
        if (out.isPresent()) {
            return new Cell(
                    lot.feed().id(),
                    group.id(),
                    name,
                    group.name(),
                    stage,
                    day,
                    OptionalDouble.empty(),
                    Optional.empty(),
                    0,
                    Optional.of(out.get().why()),
                    0);
        }
        var answer = alone.solve();
        if (answer instanceof Ration ration) {
            double putOut = ration.portions().stream()
                    .filter(portion ->
                            portion.feed().feed().id().equals(lot.feed().id()))
                    .mapToDouble(portion -> lot.putOut(portion.kg()))
                    .sum();
            return new Cell(
                    lot.feed().id(),
                    group.id(),
                    name,
                    group.name(),
                    stage,
                    day,
                    OptionalDouble.of(lot.kgAtHand() / (putOut * group.head())),
                    Optional.empty(),
                    0,
                    Optional.empty(),
                    JointChance.of(Map.of(group.name(), ration)).percent());
        }
        return shortOf(group, stage, day, lot, (NoRation) answer);
    }

    /** What is missed by the largest share when they are full of it. */
    private static Cell shortOf(Group group, Stage stage, LocalDate day, PricedFeed lot, NoRation none) {
        var diet = none.diet();
        var kg = full(diet, lot);
        var danger = diet.rows().stream()
                .filter(row -> row.kind() == DietRow.Kind.DANGER && row.margin(kg) < 0)
                .findFirst();
        var worst = diet.rows().stream()
                .filter(row -> BROUGHT.contains(row.id()))
                .max(Comparator.comparingDouble(row -> missed(row, kg)));
        double missed = Math.max(0, worst.map(row -> missed(row, kg)).orElse(0.0));
        double gain = diet.growth()
                .map(energy -> Math.min(1, Math.max(0, energy.neg() - energy.leftForGain(kg)) / energy.neg()))
                .orElse(0.0);
        var name = gain > missed
                ? "energy for gain"
                : worst.filter(row -> missed > 0)
                        .map(CarryChart::plain)
                        .or(() -> nearest(none))
                        .orElse("feed");
        return new Cell(
                lot.feed().id(),
                group.id(),
                lot.feed().name(),
                group.name(),
                stage,
                day,
                OptionalDouble.empty(),
                danger.isPresent() ? Optional.empty() : Optional.of(name),
                danger.isPresent() ? 0 : PERCENT * Math.max(gain, missed),
                danger.map(row -> "fed alone it has too much %s: %s, and %s is the most"
                        .formatted(row.name(), said(row, row.supplied(kg)), said(row, row.limit()))),
                0);
    }

    /** Missed by a hair, as where the mineral beside it thins its protein: what it should have brought, before their fill. */
    private static Optional<String> nearest(NoRation none) {
        return none.conflicts().stream()
                .map(NoRation.Conflict::row)
                .min(Comparator.comparing(row -> !BROUGHT.contains(row.id())))
                .map(CarryChart::plain);
    }

    private static String plain(DietRow row) {
        return PLAIN.getOrDefault(row.id(), row.name());
    }

    private static String said(DietRow row, double value) {
        return Quantity.of(Math.rint(value), row.unit()).asTyped();
    }

    private static double missed(DietRow row, double[] kg) {
        return -row.margin(kg) / row.limit();
    }

    /** As much of it as they hold, and of nothing else. */
    private static double[] full(Diet diet, PricedFeed lot) {
        var kg = new double[diet.feeds().size()];
        for (int i = 0; i < kg.length; i++) {
            if (diet.feeds().get(i).id().equals(lot.feed().id())) {
                double perKg = 0;
                for (var row : diet.rows()) {
                    if (row.id().equals("fill") || row.id().equals("eaten_most")) {
                        perKg = Math.max(perKg, row.coefficients()[i] / row.limit());
                    }
                }
                kg[i] = perKg > 0 ? 1 / perKg : 0;
            }
        }
        return kg;
    }
}
