package haywright.app.web.match;

import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.match.CarryChart.Cell;
import haywright.match.CarryChart.Stage;
import haywright.outlook.TestedFor;
import haywright.quantity.Unit;
import haywright.ration.PricedFeed;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;

/** The chart of lots against groups. */
public final class MatchPages {
    private MatchPages() {}

    public static void routes(Routes on) {
        on.get("match", MatchPages::show);
    }

    /** @param refused why there is no chart */
    public record View(List<Column> columns, List<Row> rows, List<Problem> refused) {}

    /** A group at one stage of this winter. */
    public record Column(UUID group, String name, String when) {}

    /** @param about tons, what is tested, protein and energy */
    public record Row(String lot, UUID id, String about, boolean isTested, List<Box> boxes) {}

    /**
     * One lot before one group.
     *
     * @param kind {@code enough}, {@code short} or {@code danger}
     * @param says in a few words
     * @param sure {@code 8 chances in 10}; empty where it does not carry them
     */
    public record Box(String kind, String says, String sure, String why) {}

    private static void show(Page page) {
        View view;
        try {
            view = view(page);
        } catch (Refused e) {
            view = new View(List.of(), List.of(), List.copyOf(e.problems()));
        }
        page.show("haywright/app/web/match/match.jte", view);
    }

    private static View view(Page page) {
        var cells = page.chart().cells();
        var columns = new ArrayList<Column>();
        for (var group : page.ranch().groups().values()) {
            for (var stage : Stage.values()) {
                cells.stream()
                        .filter(cell -> cell.group().equals(group.name()) && cell.stage() == stage)
                        .findFirst()
                        .ifPresent(cell -> columns.add(
                                new Column(group.id(), group.name(), stage.words() + ", " + Show.day(cell.day()))));
            }
        }
        var byLot = cells.stream().collect(Collectors.groupingBy(Cell::lot));
        var rows = page.yard().feeds().stream()
                .filter(feed -> byLot.containsKey(feed.feed().name()))
                .map(feed -> row(page, feed, byLot.getOrDefault(feed.feed().name(), List.of())))
                // what is not known of a lot is no reason to put it first
                .sorted(Comparator.comparing(row -> !row.isTested()))
                .toList();
        return new View(columns, rows, List.of());
    }

    private static Row row(Page page, PricedFeed feed, List<Cell> cells) {
        var id = UUID.fromString(feed.feed().id());
        var lot = page.ranch().lots().get(id);
        var tested = lot != null && TestedFor.of(page.ranch(), lot).isForFeeding();
        return new Row(
                feed.feed().name(),
                id,
                "%s tons, %s"
                        .formatted(
                                Show.number(Unit.TON.fromBase(feed.kgAtHand()), 0), tested ? "tested" : "not tested"),
                tested,
                cells.stream().map(MatchPages::box).toList());
    }

    private static Box box(Cell cell) {
        if (cell.carries()) {
            return new Box(
                    "enough",
                    "enough for " + Show.count(Math.round(cell.days().orElseThrow()), "day"),
                    Show.timesInTen(cell.surePercent()),
                    "");
        }
        return cell.danger()
                .map(why -> new Box("danger", "not yet", "", why))
                .orElseGet(() -> new Box(
                        "short",
                        cell.shortOf().orElse("feed") + " " + Show.number(Math.max(1, cell.shortPercent()), 0)
                                + " % short",
                        "",
                        ""));
    }
}
