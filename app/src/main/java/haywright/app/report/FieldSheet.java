package haywright.app.report;

import haywright.app.words.Show;
import haywright.ranch.Field;
import haywright.ranch.Lot;
import haywright.ranch.LotSubject;
import haywright.ranch.Ranch;
import haywright.ranch.Sampling;
import haywright.sampling.FieldShape;
import haywright.sampling.FieldWalk;
import haywright.sampling.Layout;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Stock;
import haywright.sampling.Subject;
import haywright.workings.Caution;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What goes to the stack: which ones in walking order with boxes for a pencil, what to bring, cautions, and labels for
 * the bags to tear off. The same sheet is one HTML file for a phone that needs no signal.
 *
 * @param lot null when it is not on the ranch any more, or the sheet is for no lot
 */
public record FieldSheet(
        Ranch ranch, Sampling sampling, @Nullable Lot lot) {
    private static final double POINTS = 10.5;

    /**
     * One to take from.
     *
     * @param where in words, for somebody who does not know the stack
     * @param bag which composite it goes into, "A" or "B"; empty where there is but one
     */
    public record Row(int order, String where, int cores, String bag) {}

    /** One label. @param bag with its check letter */
    public record Label(String bag, String lot, String says) {}

    public static FieldSheet of(Ranch ranch, Sampling sampling) {
        var lot = sampling.lot();
        return new FieldSheet(ranch, sampling, lot == null ? null : ranch.lots().get(lot));
    }

    public String lotName() {
        return sampling.what();
    }

    public List<Row> rows() {
        var places = layout().map(
                        l -> l.places().stream().collect(Collectors.toMap(p -> p.number(), Function.identity())))
                .orElse(Map.of());
        var stops = walks().stream().flatMap(w -> w.stops().stream()).toList();
        var rows = new ArrayList<Row>();
        for (int i = 0; i < sampling.picks().size(); i++) {
            int number = sampling.picks().get(i);
            var place = places.get(number);
            rows.add(new Row(
                    i + 1,
                    place != null
                            ? place.words()
                            : stops.size() == sampling.picks().size()
                                    ? stop(i + 1, stops.get(i).onTheGlobe())
                                    : sampling.material().unit() + " " + number,
                    sampling.increments(),
                    sampling.composite(i + 1)));
        }
        return rows;
    }

    /** The name of the waypoint, and the place as a phone shows it: to a metre. */
    private static String stop(int number, FieldShape.Corner at) {
        return String.format(Locale.ROOT, "S%02d at %.5f, %.5f", number, at.latitude(), at.longitude());
    }

    /** The field that the lot stands in. */
    public Optional<Field> field() {
        return lot != null && lot.stock() instanceof Stock.Standing standing
                ? Optional.ofNullable(ranch.fields().get(standing.field()))
                : Optional.empty();
    }

    /** The walk across it with a stop for each plot of the sheet; empty where it stands in no field. */
    private List<FieldWalk> walks() {
        return field().map(f -> f.walks(sampling.picks().size(), sampling.seed()))
                .orElse(List.of());
    }

    /** Whether the lot that it was made for is gone. */
    public boolean isOfALotThatIsGone() {
        return sampling.lot() != null && lot == null;
    }

    /** What it is taken from, as it is known now. */
    public Subject subject() {
        return lot == null
                ? Subject.of(
                        sampling.material(),
                        sampling.material().isCounted() ? sampling.picks().size() : 0)
                : LotSubject.of(lot);
    }

    private Optional<Layout> layout() {
        return lot == null || !sampling.material().isCounted()
                ? Optional.empty()
                : Optional.ofNullable(LotSubject.of(lot).layout());
    }

    /** The stack, or the walk across the field; empty where there is neither or the stack is too large to draw. */
    public String drawing() {
        return field().map(f -> new FieldDrawing(f.shape(), walks()).svg())
                .or(() -> layout().map(l -> new StackDrawing(l, sampling.picks()).svg()))
                .orElse("");
    }

    /** "cores", "grabs", "cuts": what is counted from each. */
    public String increments() {
        return switch (sampling.material().way()) {
            case CORED -> "Cores";
            case GRABBED -> "Grabs";
            case CLIPPED -> "Cuts";
            case BOTTLED -> "Fillings";
        };
    }

    public String take() {
        var material = sampling.material();
        int n = sampling.picks().size();
        return "%d %s, %d %s each"
                .formatted(
                        n,
                        n == 1 ? material.unit() : material.units(),
                        sampling.increments(),
                        switch (material.way()) {
                            case CORED -> sampling.increments() == 1 ? "core" : "cores";
                            case GRABBED -> sampling.increments() == 1 ? "grab" : "grabs";
                            case CLIPPED -> sampling.increments() == 1 ? "cut" : "cuts";
                            case BOTTLED -> "filling";
                        });
    }

    public String method() {
        var method = sampling.material().method();
        return List.of(method.tool(), method.bore(), method.depth(), method.entry()).stream()
                .filter(w -> !w.isEmpty())
                .collect(Collectors.joining("; "));
    }

    public List<String> cautions() {
        return plan().map(p -> p.cautions().stream().map(Caution::words).toList())
                .orElse(List.of(sampling.material().method().safety()));
    }

    public List<String> kit() {
        return plan().map(p -> p.outing().kit()).orElse(List.of());
    }

    public String minutes() {
        return plan().map(p -> "about " + p.outing().minutes() + " minutes").orElse("");
    }

    private Optional<SamplingPlan> plan() {
        return Optional.ofNullable(lot)
                .map(l -> SamplingPlan.of(
                        LotSubject.of(l),
                        new haywright.sampling.Aim(
                                sampling.rule(),
                                sampling.analyte(),
                                sampling.halfWidth(),
                                sampling.confidencePercent(),
                                sampling.purpose(),
                                sampling.seed(),
                                null,
                                null,
                                sampling.twoComposites())));
    }

    /** Why there are two bags, for somebody with cold hands. */
    public String twoBags() {
        return sampling.twoComposites()
                ? "Two bags: odd numbers into A, even ones into B. Never mix the two and never split one."
                : "";
    }

    public List<Label> labels() {
        return sampling.bags().stream()
                .map(bag -> new Label(
                        bag,
                        lotName(),
                        ranch.name() + " · " + sampling.purpose().words()))
                .toList();
    }

    public String made() {
        return Show.date(sampling.made());
    }

    public Paper paper(Paper.Size size) {
        return Paper.of(
                "Field sheet " + sampling.code(),
                "Which ones to take from %s, with boxes to fill in and bag labels".formatted(lotName()),
                "haywright/app/report/fieldSheet.jte",
                this,
                size,
                POINTS,
                sampling.made());
    }

    /** The labels alone, for more bags or another printer. */
    public Paper labelsPaper(Paper.Size size) {
        return Paper.of(
                "Bag labels " + sampling.code(),
                "Labels for the bags of " + lotName(),
                "haywright/app/report/bagLabels.jte",
                this,
                size,
                POINTS,
                sampling.made());
    }

    public String phonePage() {
        return Paper.text("haywright/app/report/phoneSheet.jte", this);
    }

    /** A file of this room, put into the one file that goes to a phone. */
    public String own(String name) {
        try (var in = Objects.requireNonNull(FieldSheet.class.getResourceAsStream(name), name)) {
            return new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    public String fileName(String what) {
        return "%s-%s".formatted(what, sampling.code());
    }
}
