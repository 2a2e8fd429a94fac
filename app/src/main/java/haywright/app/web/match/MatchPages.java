package haywright.app.web.match;

import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.EatWords;
import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.feeding.SeasonByRations;
import haywright.match.CarryChart.Cell;
import haywright.match.CarryChart.Stage;
import haywright.match.SmallestFix;
import haywright.outlook.TestedFor;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import haywright.season.WinterPlan;
import haywright.season.given.Season;
import haywright.season.kept.KeptPlan;
import haywright.workings.Problem;
import haywright.workings.Refused;
import io.javalin.http.NotFoundResponse;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The chart of lots against groups. */
public final class MatchPages {
    /** Percent from which on a lot is drawn as enough: 7 times in 10, as often as most rations are (judgment). */
    private static final double SURE = 65;

    private MatchPages() {}

    public static void routes(Routes on) {
        on.get("match", MatchPages::show);
        on.get("match/{lot}/{group}/{stage}", MatchPages::one);
    }

    /**
     * @param eats who eats what to turnout by the winter's plan; empty where none can be made
     * @param keep what it says of the lots beside that
     * @param refused why there is no chart
     */
    public record View(
            List<Column> columns, List<Row> rows, List<EatWords.Same> eats, String keep, List<Problem> refused) {}

    /**
     * A group with the stages of this winter that it is looked at in.
     *
     * @param when of each, in words
     */
    public record Column(UUID group, String name, List<String> when) {}

    /**
     * One lot before one group at one stage.
     *
     * @param fix the one feed that makes it enough; empty where it is enough, may not be fed, or where no one feed does
     * @param isUntested whether a danger has to be tested for first
     */
    public record One(String lot, UUID id, String about, Column column, Box box, String fix, boolean isUntested) {}

    /**
     * @param about tons, what is tested
     * @param isUntested whether a danger has to be tested for first
     * @param notYet why nobody may eat it alone, once for all; empty where some may
     * @param cells a list of stages for each group
     */
    public record Row(
            String lot,
            UUID id,
            String about,
            boolean isTested,
            boolean isUntested,
            String notYet,
            List<List<Box>> cells) {}

    /**
     * One lot before one group at one stage.
     *
     * @param kind {@code enough}, {@code maybe} where it is by what is expected and not surely, {@code short} or {@code danger}
     * @param on its day: {@code now}, {@code Feb 13}
     * @param share of what they need that it brings, 0 to 1
     * @param says in a few words
     * @param sure {@code 8 times in 10}; empty where it does not carry them
     * @param at the page of this box alone
     */
    public record Box(String kind, String on, double share, String says, String sure, String why, String at) {}

    private static void show(Page page) {
        View view;
        try {
            view = view(page);
        } catch (Refused e) {
            view = new View(List.of(), List.of(), List.of(), "", List.copyOf(e.problems()));
        }
        page.show("haywright/app/web/match/match.jte", view);
    }

    private static View view(Page page) {
        var byLot = page.chart().cells().stream().collect(Collectors.groupingBy(Cell::feed));
        var groups = List.copyOf(page.ranch().groups().values());
        var rows = page.yard().feeds().stream()
                .filter(feed -> byLot.containsKey(feed.feed().id()))
                .map(feed ->
                        row(page, feed, groups, byLot.getOrDefault(feed.feed().id(), List.of())))
                // what is not known of a lot is no reason to put it first
                .sorted(Comparator.comparing(row -> !row.isTested()))
                .toList();
        var any = byLot.values().stream().findFirst().orElse(List.of());
        var columns = groups.stream()
                .map(group -> new Column(
                        group.id(),
                        group.name(),
                        of(any, group).map(MatchPages::when).toList()))
                .toList();
        var mixed = page.chart().onlyMixed();
        var book = page.book();
        if (book.isPresent()) {
            var kept = book.get();
            var eats = EatWords.same(kept.plan(), kept.grass(), mixed);
            return new View(columns, rows, eats, EatWords.keep(kept, mixed), List.of());
        }
        // where there is no book, the plan that one would begin with is there at once
        if (!Season.lacking(page.yard()).isEmpty()) {
            return new View(columns, rows, List.of(), fed(page), List.of());
        }
        var rations = page.rations();
        var winter = rations.once(WinterPlan.class, () -> WinterPlan.of(SeasonByRations.of(rations)));
        var plan = KeptPlan.of(winter.plan(), winter.season());
        var grass = winter.season().grass();
        return new View(
                columns,
                rows,
                EatWords.same(plan, grass, mixed),
                EatWords.keep(plan, page.today(), grass, mixed),
                List.of());
    }

    /** Without a turnout date nothing can be planned, and the rations of today are all there is. */
    private static String fed(Page page) {
        return page.ranch().groups().values().stream()
                .flatMap(group -> page.rations().toFeed(group).stream()
                        .filter(portion -> portion.feed().isHayOrSilage())
                        .max(Comparator.comparingDouble(Portion::kg))
                        .map(portion ->
                                "%s for %s.".formatted(portion.feed().feed().name(), group.name()))
                        .stream())
                .collect(Collectors.joining(" "));
    }

    private static Stream<Cell> of(List<Cell> cells, Group group) {
        return cells.stream().filter(cell -> cell.groupId().equals(group.id()));
    }

    private static String when(Cell cell) {
        return cell.stage() == Stage.NOW ? "now" : cell.stage().words() + ", " + Show.day(cell.day());
    }

    private static Row row(Page page, PricedFeed feed, List<Group> groups, List<Cell> cells) {
        var id = UUID.fromString(feed.feed().id());
        var lot = page.ranch().lots().get(id);
        var of = lot == null ? null : TestedFor.of(page.ranch(), lot);
        boolean isOut = cells.stream().allMatch(cell -> cell.danger().isPresent());
        return new Row(
                feed.feed().name(),
                id,
                about(page, feed),
                of != null && of.isForFeeding(),
                isUntested(page.ranch(), id),
                isOut ? cells.get(0).danger().orElse("") : "",
                isOut
                        ? List.of()
                        : groups.stream()
                                .map(group -> of(cells, group)
                                        .map(cell -> box(page, id, cell))
                                        .toList())
                                .toList());
    }

    private static String about(Page page, PricedFeed feed) {
        var lot = page.ranch().lots().get(UUID.fromString(feed.feed().id()));
        return "%s, %s"
                .formatted(
                        Show.tons(feed.kgAtHand()),
                        lot == null ? "not tested" : tested(lot, TestedFor.of(page.ranch(), lot)));
    }

    /** {@code tested for protein, fiber, not for nitrate}: what stops a lot is named beside what it was tested for. */
    private static String tested(Lot lot, TestedFor of) {
        var words = Character.toLowerCase(of.words().charAt(0)) + of.words().substring(1);
        return lot.isNitrateDanger() && of.reports() > 0 && !of.parts().contains(TestedFor.Part.NITRATE)
                ? words + ", not for nitrate"
                : words;
    }

    private static Box box(Page page, UUID lot, Cell cell) {
        var at = page.at("match/%s/%s/%s".formatted(lot, cell.groupId(), Form.id(cell.stage())));
        var on = cell.stage() == Stage.NOW ? "now" : Show.day(cell.day());
        if (cell.carries()) {
            return new Box(
                    cell.surePercent() < SURE ? "maybe" : "enough",
                    on,
                    1,
                    days(page, cell),
                    Show.timesInTen(cell.surePercent()),
                    "",
                    at);
        }
        return cell.danger()
                .map(why -> new Box(
                        "danger",
                        on,
                        0,
                        isUntested(page.ranch(), lot) ? "not yet" : "only mixed with other feed",
                        "",
                        why,
                        at))
                .orElseGet(() -> new Box("short", on, 1 - cell.shortPercent() / 100, shortOf(cell), "", "", at));
    }

    /** Whether its crop can store nitrate and nobody looked: until then it is for nobody. */
    private static boolean isUntested(Ranch ranch, UUID id) {
        var lot = ranch.lots().get(id);
        return lot != null
                && lot.isNitrateDanger()
                && !TestedFor.of(ranch, lot).parts().contains(TestedFor.Part.NITRATE);
    }

    /** Days after turnout feed nobody. */
    private static String days(Page page, Cell cell) {
        long days = Math.round(cell.days().orElseThrow());
        var turnout = page.ranch().turnout();
        return turnout != null && cell.day().plusDays(days).isAfter(turnout)
                ? "past turnout"
                : days > Yard.LONGEST_WINTER ? "all winter" : Show.count(days, "day");
    }

    private static String shortOf(Cell cell) {
        var what = cell.shortOf().orElse("feed");
        return cell.shortPercent() < 1
                ? what + " just short"
                : cell.shortPercent() > 99
                        ? "no " + what
                        : "%s %s %% short".formatted(what, Show.number(cell.shortPercent(), 0));
    }

    private static void one(Page page) {
        var group = page.find(page.ranch().groups(), "group");
        var lot = page.find(page.ranch().lots(), "lot");
        var stage = Stream.of(Stage.values())
                .filter(one -> Form.id(one).equals(page.http().pathParam("stage")))
                .findFirst()
                .orElseThrow(NotFoundResponse::new);
        var cell = page.chart().cells().stream()
                .filter(one -> one.feed().equals(lot.id().toString())
                        && one.groupId().equals(group.id())
                        && one.stage() == stage)
                .findFirst()
                .orElseThrow(() -> new NotFoundResponse("The chart has no such box any more."));
        var feed = page.yard().feeds().stream()
                .filter(one -> one.feed().id().equals(lot.id().toString()))
                .findFirst()
                .orElseThrow(NotFoundResponse::new);
        boolean isUntested = isUntested(page.ranch(), lot.id());
        var fix = cell.carries() || isUntested
                ? ""
                : SmallestFix.of(page.yard(), group, stage, lot.id().toString())
                        .map(MatchPages::fix)
                        .orElse("");
        page.show(
                "haywright/app/web/match/one.jte",
                new One(
                        lot.name(),
                        lot.id(),
                        about(page, feed),
                        new Column(group.id(), group.name(), List.of(when(cell))),
                        box(page, lot.id(), cell),
                        fix,
                        isUntested));
    }

    /** {@code Add 2.5 lb of Cake per head per day …}: in half pounds, and nothing of which less than one is handed out. */
    private static String fix(SmallestFix fix) {
        double needed = Unit.POUND.fromBase(fix.added().kgPutOut());
        double pounds = Math.max(1, Math.ceil(2 * needed) / 2);
        return "Add %s of %s per head per day, as fed: $%s. Then it is enough %s."
                .formatted(
                        Show.withUnit(Show.significant(pounds, 3), Unit.POUND),
                        fix.added().feed().feed().name(),
                        Show.number(fix.added().cost() * pounds / needed, 2),
                        Show.timesInTen(fix.surePercent()));
    }
}
