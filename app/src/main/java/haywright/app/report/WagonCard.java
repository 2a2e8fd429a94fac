package haywright.app.report;

import haywright.app.words.BunkRoom;
import haywright.app.words.ColdWords;
import haywright.app.words.Feeding;
import haywright.app.words.Show;
import haywright.feeding.Offers;
import haywright.quantity.Unit;
import haywright.ranch.Pen;
import haywright.ration.Portion;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The card in the tractor: what goes into the wagon in which order, what the scale reads after each, and a box for what was
 * really fed. By the ration; by what is fed now where there is none. What may not be fed is on no card.
 */
public record WagonCard(Offers offers) {
    private static final double LARGEST_POINTS = 15;
    private static final double SMALLEST_POINTS = 11;

    public static final String NOT_ZEROED = Loads.NOT_ZEROED;

    /** Days that there is a box for. */
    public static final int DAYS = 7;

    /**
     * @param pounds into one load
     * @param reads what the scale reads then
     * @param note where it lies, and bales a day for the whole group; empty where neither is known
     */
    public record Line(String feed, String note, String pounds, String reads) {}

    private List<Portion> portions() {
        return new PutOut(offers).portions();
    }

    /** Said in place of the card where what they get now has a feed that may not be fed; empty for most. */
    public Optional<String> stop() {
        return new PutOut(offers).stop();
    }

    private Loads loads() {
        return Loads.of(offers);
    }

    /** Whether there is anything to load. */
    public boolean isEmpty() {
        return loads().steps().isEmpty();
    }

    public List<Line> lines() {
        return loads().steps().stream().map(this::line).toList();
    }

    /** What the load is made of: share of its weight by feed. */
    public Map<UUID, Double> shares() {
        var steps = loads().steps();
        double pounds = steps.stream().mapToDouble(Loads.Step::pounds).sum();
        var shares = new LinkedHashMap<UUID, Double>();
        steps.forEach(step ->
                shares.merge(UUID.fromString(step.portion().feed().feed().id()), step.pounds() / pounds, Double::sum));
        return shares;
    }

    /** kg put out a day for the whole group, by feed, mineral with it. */
    public Map<String, Double> aDayKg() {
        return portions().stream()
                .collect(Collectors.toMap(
                        portion -> portion.feed().feed().id(),
                        portion -> offers.group().head() * portion.kgPutOut(),
                        Double::sum));
    }

    private Line line(Loads.Step step) {
        var portion = step.portion();
        var lot = offers.yard()
                .ranch()
                .lots()
                .get(UUID.fromString(portion.feed().feed().id()));
        return new Line(
                portion.feed().feed().name(),
                Stream.of(
                                lot == null ? LetterWords.BOUGHT : lot.where(),
                                feeding(portion).aboutBales().orElse(""))
                        .filter(words -> !words.isBlank())
                        .collect(Collectors.joining(", ")),
                Show.number(step.pounds(), 0),
                Show.number(step.reading(), 0));
    }

    private Feeding feeding(Portion portion) {
        return new Feeding(
                portion.kgPutOut(), offers.group().head(), offers.yard().baleKg(portion));
    }

    /** Whether a mixer takes it all in one; else the feeds go out one after another. */
    public boolean isMixed() {
        return Loads.isMixed(offers.yard());
    }

    /** What can kill, a sentence each. */
    public List<String> dangers() {
        var says = new ArrayList<>(Cautions.deadly(
                offers.yard(), offers.rations().question(offers.group()).diet(), portions()));
        boolean isNew = offers.sure().isPresent()
                && offers.now().filter(now -> !now.mix().notAllowed().isEmpty()).isPresent();
        if (isNew) {
            says.add("What they get now must stop: call before you begin with this.");
        }
        return says;
    }

    /** {@code 2 loads a day, all alike}. */
    public String count() {
        if (!isMixed()) {
            return "Put these out one after another, in this order";
        }
        int count = loads().count();
        return count == 1 ? "One load a day" : Show.count(count, "load") + " a day, all alike";
    }

    /** Free choice beside it: {@code Winter mineral 12-8, free choice: about 2 oz per head, 230 lb a week for all}. */
    public List<String> beside() {
        return portions().stream()
                .filter(p -> p.feed().feed().isLooseMineral())
                .map(p -> "%s, free choice: about %s oz per head, %s lb a week for all"
                        .formatted(
                                p.feed().feed().name(),
                                Show.number(Math.max(1, Math.rint(Unit.OUNCE.fromBase(p.kgPutOut()))), 0),
                                Show.number(
                                        Math.max(1, Math.rint(DAYS * feeding(p).groupPounds())), 0)))
                .toList();
    }

    /** More for the cold, a sentence each. */
    public List<String> cold() {
        return offers.cold().map(ColdWords::onACard).orElse(List.of());
    }

    /** How much room they need to eat; empty for most. */
    public Optional<String> room() {
        return BunkRoom.words(offers);
    }

    /** What is left from the feeding before lies where they are fed. */
    public String left() {
        return pen().bunk().isBlank() ? "Left over" : "Left in bunk";
    }

    /** While they change over; empty where nothing in it is new to them. */
    public Optional<Changeover> changeover() {
        return Changeover.of(offers);
    }

    public String ranchName() {
        return offers.yard().ranch().name();
    }

    public boolean invented() {
        return offers.yard().ranch().settings().invented();
    }

    public String name() {
        return offers.group().name();
    }

    public String head() {
        return Show.number(offers.group().head(), 0) + " head";
    }

    public String day() {
        return Show.date(offers.yard().day());
    }

    public Pen pen() {
        return offers.yard().ranch().pen(offers.group().id());
    }

    public boolean isWeighed() {
        return Loads.isWeighed(offers.yard());
    }

    /** Until when it is good. */
    public String until() {
        return portions().isEmpty() ? "" : Show.day(offers.goodUntil().day());
    }

    public String fileName(Paper.Size size) {
        return "wagon-card-%s-%s-%s.pdf"
                .formatted(FeedLetter.plain(name()), offers.yard().day(), size.id());
    }

    /** On one page, in smaller print if it must be: what is on the back is not read in a tractor. */
    public Paper paper(Paper.Size size) {
        return Paper.onOnePage(LARGEST_POINTS, SMALLEST_POINTS, points -> paper(size, points));
    }

    private Paper paper(Paper.Size size, double points) {
        return Paper.of(
                "Wagon card: " + name() + ", " + ranchName(),
                "What goes into the wagon in which order, and a box for what was really fed",
                "haywright/app/report/wagonCard.jte",
                this,
                size,
                points,
                offers.yard().day());
    }
}
