package haywright.app.exchange.text;

import haywright.app.exchange.lab.Cells;
import haywright.app.exchange.lab.Counted;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.HalfDry;
import haywright.app.exchange.lab.Laboratory;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood.Cell;
import haywright.app.exchange.lab.Understood.Column;
import haywright.app.exchange.lab.Understood.Sample;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.line.TextLine;
import haywright.app.words.Said;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.Tested;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The samples of a report, which its tables fill one after the other. */
final class Samples {
    private static final int MOST_SAMPLES = 500;

    private final Vocabulary words;
    private final Consumer<Column> ask;
    private final Decimals.Sheet decimals;
    private final @Nullable Basis untold;
    private final Set<String> notTaken;
    private final Ledger ledger;
    /** Why figures were taken back; empty where none were. */
    private String back = "";

    private final Set<String> withoutBasis = new LinkedHashSet<>();
    private final List<Draft> drafts = new ArrayList<>();
    /** Those that the last table speaks for. */
    private List<Draft> current = List.of();

    /** A sample that is not whole yet. */
    private static final class Draft {
        private String code = "";
        private String lot = "";
        private final Set<String> also = new LinkedHashSet<>();
        private String laboratory = "";
        private String sampled = "";
        private String reported = "";
        private Tested.@Nullable Method method;
        private final int page;
        private final Cells cells = new Cells();
        private String customer = "";
        private final List<String> remarks = new ArrayList<>();

        Draft(int page) {
            this.page = page;
        }
    }

    /**
     * What is said over a table.
     *
     * @param names of samples side by side, line by line; empty where there are none
     * @param laboratory of the letterhead; empty where there is none
     */
    record Above(List<List<String>> names, Head said, String laboratory, Tested.@Nullable Method method) {}

    /**
     * @param notTaken what is not taken is added to it, in words
     * @param ask takes what is asked of two figures of one analyte
     */
    Samples(
            Vocabulary words,
            Decimals.Sheet decimals,
            @Nullable Basis untold,
            Set<String> notTaken,
            Consumer<Column> ask,
            Ledger ledger) {
        this.words = words;
        this.ask = ask;
        this.decimals = decimals;
        this.untold = untold;
        this.notTaken = notTaken;
        this.ledger = ledger;
    }

    private void list(TextLine line, String why) {
        notTaken.add(line.notTaken(why));
        ledger.settle(line);
    }

    private void settle(Figure figure) {
        ledger.settle(figure.line(), List.of(figure.word()));
        ledger.settle(figure.line(), figure.beside());
    }

    /** Figures that the sheet takes back, in its own words. */
    void back(String why) {
        back = back.isEmpty() ? why : back;
    }

    boolean isEmpty() {
        return current.isEmpty();
    }

    /** The next table speaks for those of the last one where it goes on with them, else for new ones. */
    void begin(List<Figure> figures, List<String> codes, int groups, Above above) {
        boolean goesOn = current.size() == groups
                && (codes.isEmpty()
                        ? !contradicts(figures)
                        : current.stream().map(d -> d.code).toList().equals(codes));
        if (goesOn) {
            return;
        }
        int page = figures.get(0).line().page();
        var before = drafts.isEmpty() ? null : drafts.get(drafts.size() - 1);
        current = new ArrayList<>();
        for (int i = 0; i < groups; i++) {
            var draft = new Draft(page);
            draft.code = codes.size() == groups ? codes.get(i) : groups == 1 && !codes.isEmpty() ? codes.get(0) : "";
            if (groups == 1) { // beside a number often stands what the ranch calls it
                draft.lot = above.said.all(Told.BAG).stream()
                        .filter(name -> !name.equals(draft.code))
                        .findFirst()
                        .or(() -> above.said.all(Told.LOT).stream().findFirst())
                        .filter(name -> !name.equals(draft.code))
                        .orElse("");
            }
            for (var line : above.names) {
                if (line.size() == groups) {
                    draft.also.add(line.get(i));
                }
            }
            var lab = above.said.of(Told.LABORATORY, i, groups);
            draft.laboratory = Laboratory.name(lab.isEmpty() ? above.laboratory : lab);
            draft.sampled = above.said.of(Told.SAMPLED, i, groups);
            draft.reported = above.said.of(Told.REPORTED, i, groups);
            draft.method = above.method;
            draft.customer = above.said.of(Told.CUSTOMER, i, groups);
            var remarks = above.said.all(Told.REMARK);
            draft.remarks.addAll(remarks.size() == groups ? List.of(remarks.get(i)) : remarks);
            settle(above.said, draft, groups == 1);
            if (before != null && before.page == page) { // said once over several tables of a page
                draft.reported = draft.reported.isEmpty() ? before.reported : draft.reported;
                draft.method = draft.method == null ? before.method : draft.method;
                draft.customer = draft.customer.isEmpty() ? before.customer : draft.customer;
            }
            current.add(draft);
        }
        drafts.addAll(current);
        if (drafts.size() > MOST_SAMPLES) {
            throw new Refused(
                    "text", drafts.size() + " samples", "this is more than are taken in at once", "Split the file.");
        }
    }

    /** What a sample has of the lines above it is settled, and what it is called beside its code goes with it. */
    private void settle(Head said, Draft draft, boolean isOnly) {
        for (var field : said.fields()) {
            var value = field.value();
            boolean isName = field.told() == Told.BAG || field.told() == Told.NUMBER || field.told() == Told.LOT;
            if (isName
                    && !value.equals(draft.code)
                    && !value.equals(draft.lot)
                    && said.codes(1).contains(draft.code)
                    && (isOnly || said.all(field.told()).size() == 1)) {
                draft.also.add(value);
            }
            boolean isKept = isName
                    ? Stream.concat(draft.also.stream(), Stream.of(draft.code, draft.lot))
                            .anyMatch(value::equals)
                    : Stream.of(draft.laboratory, draft.sampled, draft.reported).anyMatch(value::equals);
            if (isKept) {
                ledger.settle(field.line(), field.from(), field.to());
            }
        }
    }

    /** The next line of a table speaks for one sample: one that an earlier table named already, or a new one. */
    void inLine(String code, List<Figure> figures, Above above) {
        var before = drafts.stream()
                .filter(draft -> !code.isEmpty() && draft.code.equals(code))
                .findFirst()
                .orElse(null);
        current = before == null ? List.of() : List.of(before);
        if (before == null || contradicts(figures)) {
            current = List.of();
            begin(figures, code.isEmpty() ? List.of() : List.of(code), 1, above);
        }
    }

    private boolean contradicts(List<Figure> figures) {
        return current.size() == 1
                && figures.stream().anyMatch(f -> {
                    var cell =
                            new Cell(f.analyte(), f.unit(), f.basis(), f.word().figure(), f.read(), f.share(), null);
                    return current.get(0).cells.contradicts(cell);
                });
    }

    /** One row of the table. @param sample which of those that the table speaks for */
    void take(int sample, List<Figure> row) {
        var draft = current.get(sample);
        var analyte = row.get(0).analyte();
        if (analyte.hasBasis()) {
            row.forEach(figure -> cell(draft, figure));
            return;
        }
        // one figure whatever the basis; dry matter of dry matter is 100 and says nothing
        boolean isWater = analyte == Analyte.DM || analyte == Analyte.MOISTURE;
        var figures = row.stream()
                .filter(f -> !isWater || row.size() == 1 || f.basis() != Basis.DRY_MATTER)
                .toList();
        if (isWater
                && row.size() == 1
                && row.get(0).basis() == Basis.DRY_MATTER
                && row.get(0).isWhole()) {
            settle(row.get(0));
            return;
        }
        // what is dropped must be nothing or all, or it was something else
        boolean isStrange = row.stream()
                .anyMatch(f -> !figures.contains(f)
                        && !f.isWhole()
                        && figures.stream()
                                .noneMatch(kept ->
                                        kept.word().figure().equals(f.word().figure())));
        if (isStrange) {
            list(row.get(0).line(), "it has one figure whatever the basis, and here stand several");
            return;
        }
        long standing = figures.stream().map(f -> f.word().figure()).distinct().count();
        if (standing > 1) {
            list(row.get(0).line(), "it has one figure whatever the basis, and here stand " + standing);
        } else if (!figures.isEmpty()) {
            cell(draft, figures.get(0));
            row.forEach(this::settle);
        }
    }

    private void cell(Draft draft, Figure figure) {
        var analyte = figure.analyte();
        var unit = figure.unit();
        var line = figure.line();
        if (unit != null && unit.kind() != analyte.unit().kind()) {
            list(line, "%s is not measured in %s".formatted(analyte.words(), unit.symbol()));
            return;
        }
        boolean hasNoLimit = Said.isWithoutLimit(figure.word().text());
        var share = figure.share();
        boolean isBased = analyte.hasBasis() && share == null;
        var basis = !isBased ? null : figure.basis() == null ? untold : figure.basis();
        if (isBased && basis == null && !hasNoLimit) {
            withoutBasis.add(figure.name());
            return;
        }
        var text = decimals.pointed(figure.word().figure(), unit);
        var cell = new Cell(analyte, unit, basis, text, figure.read(), share, figure.method());
        settle(figure);
        draft.cells.add(cell, figure.read(), "Line " + line.number());
    }

    /**
     * @param isAsked whether something is asked first, so that there may be none yet
     * @param lines of the sheet
     * @throws Refused where a basis is to be told, or nothing was taken
     */
    List<Sample> whole(boolean isAsked, List<String> lines) {
        if (isAsked && drafts.stream().allMatch(draft -> draft.cells.isEmpty())) {
            return List.of();
        }
        if (!withoutBasis.isEmpty()) {
            throw new Refused(
                    "basis",
                    String.join(", ", withoutBasis.stream().limit(8).toList()),
                    HalfDry.why("the report", lines),
                    HalfDry.fix(
                            lines,
                            "Look at the sheet and say which, or write the heading over the column in the text."));
        }
        drafts.removeIf(draft -> draft.cells.isEmpty());
        if (drafts.isEmpty() && !back.isEmpty()) {
            throw Counted.allBack(back);
        }
        if (drafts.isEmpty()) {
            throw new Refused(
                    "text",
                    "",
                    "no line in it has the name of an analyte with a figure that could be placed",
                    notTaken.stream()
                            .filter(words -> words.contains("heading"))
                            .findFirst()
                            .map(words -> words
                                    + ". Write the headings As received and Dry matter over the columns,"
                                    + " with two spaces or a stroke | between them.")
                            .orElse("Is this the report? Type the figures if it is written in another way."));
        }
        return drafts.stream()
                .map(d -> new Sample(
                        d.code,
                        d.lot,
                        List.copyOf(d.also),
                        d.laboratory,
                        d.sampled,
                        d.reported,
                        d.method,
                        d.cells.whole(words, notTaken::add, ask),
                        d.customer,
                        d.remarks))
                .toList();
    }
}
