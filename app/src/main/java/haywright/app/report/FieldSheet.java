package haywright.app.report;

import haywright.app.report.picture.FieldDrawing;
import haywright.app.report.picture.StackDrawing;
import haywright.app.words.MassWords;
import haywright.app.words.Orders;
import haywright.app.words.SamplingWords;
import haywright.app.words.Show;
import haywright.outlook.SampledLot;
import haywright.quantity.Unit;
import haywright.ranch.Field;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.Sampling;
import haywright.sampling.CompositeMass;
import haywright.sampling.Material;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Subject;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
import haywright.sampling.stock.Layout;
import haywright.sampling.stock.Place;
import haywright.sampling.stock.Stock;
import haywright.workings.Caution;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What goes to the stack: which ones in walking order with boxes for a pencil, how to take, mix and keep it, cautions, and
 * labels for the bags to tear off. The same sheet is one HTML file for a phone that needs no signal.
 *
 * @param lot null when it is not on the ranch any more, or the sheet is for no lot
 * @param plan as it was made
 */
public record FieldSheet(
        Ranch ranch, Sampling sampling, @Nullable Lot lot, SamplingPlan plan) {
    private static final double POINTS = 10;
    private static final Pattern SIZE = Pattern.compile("width=\"([0-9]+)\" height=\"([0-9]+)\" role=\"img\"");
    private static final double SCALE = 0.75;
    private static final int NARROW = 240;

    /**
     * One to take from.
     *
     * @param where in words, for somebody who does not know the stack
     * @param bag which composite it goes into, "A" or "B"; empty where there is but one
     */
    public record Row(int order, String where, int cores, String bag) {}

    /**
     * One label.
     *
     * @param bag with its check letter
     * @param which "Bag 1 of 2"
     */
    public record Label(String bag, String which, String lot, String says) {}

    public static FieldSheet of(Ranch ranch, Sampling sampling) {
        var id = sampling.lot();
        var lot = id == null ? null : ranch.lots().get(id);
        return new FieldSheet(ranch, sampling, lot, SampledLot.of(sampling, lot).plan());
    }

    public String lotName() {
        return sampling.what();
    }

    /** Where it lies, as it was typed so that a stranger finds it; empty where was not entered. */
    public String liesAt() {
        return lot == null ? "" : lot.where();
    }

    public Material material() {
        return sampling.material();
    }

    public List<Row> rows() {
        var places = layout().map(
                        l -> l.places().stream().collect(Collectors.toMap(Place::number, Function.identity())))
                .orElse(Map.of());
        var stops = walks().stream().flatMap(w -> w.stops().stream()).toList();
        var rows = new ArrayList<Row>();
        for (int i = 0; i < sampling.picks().size(); i++) {
            int number = sampling.picks().get(i);
            var place = places.get(number);
            var where = material().unit() + " " + number;
            if (place != null) {
                where = subject().where(place);
            } else if (stops.size() == sampling.picks().size()) {
                where = stop(i + 1, stops.get(i).onTheGlobe());
            }
            rows.add(new Row(i + 1, where, sampling.increments(), sampling.composite(i + 1)));
        }
        return rows;
    }

    /** Whether the lot that it was made for is gone. */
    public boolean isOfALotThatIsGone() {
        return sampling.lot() != null && lot == null;
    }

    /** What it is taken from, as it is known now. */
    public Subject subject() {
        return plan.subject();
    }

    private Optional<Layout> layout() {
        return Optional.ofNullable(subject().layout());
    }

    /** The field that the crop stands in; empty where it stands in none. */
    public Optional<Field> field() {
        return lot != null && lot.stock() instanceof Stock.Standing standing
                ? Optional.ofNullable(ranch.fields().get(standing.field()))
                : Optional.empty();
    }

    /** The walk across it with a stop for each plot of the sheet; empty where it stands in no field. */
    private List<FieldWalk> walks() {
        try {
            return field().map(f -> f.walks(sampling.picks().size(), sampling.seed()))
                    .orElse(List.of());
        } catch (Refused e) {
            return List.of();
        }
    }

    /** The name of the waypoint, and the place as a phone shows it: to a meter. */
    private static String stop(int number, FieldShape.Corner at) {
        return String.format(Locale.ROOT, "S%02d at %.5f, %.5f", number, at.latitude(), at.longitude());
    }

    /** How the walk goes, for whoever counts steps; empty where there is none. */
    public String walkSays() {
        var walks = walks();
        var apart = walks.size() == 1
                ? ", about %s ft apart"
                        .formatted(
                                Show.significant(Unit.FOOT.fromBase(walks.get(0).stepMeters()), 2))
                : "";
        return walks.isEmpty()
                ? ""
                : "Latitude and longitude, in order along the dashed line%s; north is up.".formatted(apart);
    }

    /** Empty where nothing is stacked or the stack is too large to draw. */
    public String drawing() {
        return layout().map(l -> new StackDrawing(l, sampling.picks()).svg())
                .or(() -> field().filter(f -> !walks().isEmpty()).map(f -> new FieldDrawing(f.shape(), walks()).svg()))
                .orElse("");
    }

    /** What the marks of the drawing mean; empty where nothing is drawn. */
    public String key() {
        return drawing().isEmpty()
                ? ""
                : layout().isPresent()
                        ? StackDrawing.KEY
                        : "Black number: a stop. Dashed: the walk, around what is not field. " + walkSays();
    }

    /** What is to be weighed on the way and written down: "Bales weighed, lb"; empty where nothing is. */
    public String weights() {
        return material() == Material.STANDING_FORAGE
                ? "Grams of each plot as cut, in order"
                : material().isBaled() ? "Bales weighed, lb" : "";
    }

    /** As {@link #drawing()}, as large as it has to be on paper. */
    public String paperDrawing() {
        return SIZE.matcher(drawing())
                .replaceFirst(m -> "width=\"%d\" height=\"%d\" role=\"img\" alt=\"Which ones to take\""
                        .formatted(onPaper(m.group(1)), onPaper(m.group(2))));
    }

    /** Whether the list has room beside it. */
    public boolean isDrawingNarrow() {
        var size = SIZE.matcher(drawing());
        return size.find() && onPaper(size.group(1)) <= NARROW;
    }

    private static int onPaper(String pixels) {
        return (int) (SCALE * Integer.parseInt(pixels));
    }

    public Orders orders() {
        return Orders.of(plan);
    }

    public String take() {
        return orders().amount(material(), sampling.picks().size(), sampling.increments());
    }

    /** What one unit gives, as a heading: "Cores". */
    public String increments() {
        var one = orders().increment();
        return Show.capital(one) + "s";
    }

    /** Whether how many came from each has to be asked: a scoop is a scoop. */
    public boolean isCountedInEach() {
        return sampling.increments() > 1
                || !orders().increment().equals(material().unit());
    }

    public String howMuch() {
        return MassWords.of(plan);
    }

    /** What cannot be reached, and what that makes of the result; empty where all could be drawn. */
    public String limits() {
        return plan.picks().map(p -> p.limits()).orElse("");
    }

    /** The number that draws the same ones again; empty where nothing was drawn. */
    public String drawn() {
        return plan.picks().isPresent() || field().isPresent() ? "pick set " + sampling.seed() : "";
    }

    public List<String> cautions() {
        return SamplingWords.cautions(plan).stream().map(Caution::words).toList();
    }

    public String kit() {
        return String.join("; ", SamplingWords.kit(plan));
    }

    public String minutes() {
        return "About " + plan.outing().minutes() + " minutes there";
    }

    /** Why there are two bags, for somebody with cold hands. */
    public String twoBags() {
        return sampling.twoComposites() ? "Two bags: odd numbers in A, even in B. Don’t mix them or split one." : "";
    }

    public List<Label> labels() {
        var bags = sampling.bags();
        boolean oneInTwo = !sampling.twoComposites()
                && sampling.analyses() == 1
                && plan.mass().map(CompositeMass::isTooMuch).orElse(false);
        var labels = new ArrayList<Label>();
        for (int i = 0; i < bags.size(); i++) {
            var which = "Bag %d of %d".formatted(i + 1, oneInTwo ? 2 : sampling.analyses());
            if (sampling.twoComposites()) {
                which = i == 0 ? "Bag A: odd numbers" : "Bag B: even numbers";
            } else if (!oneInTwo && i >= sampling.analyses()) {
                which = "Spare label, for one more bag";
            }
            labels.add(new Label(
                    bags.get(i),
                    which,
                    lotName(),
                    "%s · %s%s"
                            .formatted(
                                    ranch.name(),
                                    sampling.purpose().words(),
                                    oneInTwo ? " · two bags are one sample: grind both together" : "")));
        }
        return labels;
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
                sampling.made(),
                "Field sheet %s · %s".formatted(sampling.code(), ranch.name()));
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

    public String fileName(String what) {
        return "%s-%s".formatted(what, sampling.code());
    }
}
