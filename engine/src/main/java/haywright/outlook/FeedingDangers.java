package haywright.outlook;

import haywright.diet.Diet;
import haywright.diet.Feed;
import haywright.diet.HowNitrateIsFed;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.hazard.HazardClass.Hazard;
import haywright.ranch.Lot;
import haywright.ranch.WaterSource;
import haywright.ration.Portion;
import haywright.workings.Caution;
import haywright.workings.Source;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Dangers of what is fed that no row of a ration can see, each only where its feed, water or season is at hand: how feed high
 * in nitrate goes out, ergot, moldy sweetclover, vitamin A, selenium both ways, sulfate with distillers grains, water
 * under ice. Short words for whoever feeds.
 */
public final class FeedingDangers {
    private static final Pattern ERGOT = Pattern.compile("\\b(rye|triticale|screenings)\\b", Pattern.CASE_INSENSITIVE);
    private static final Pattern SWEETCLOVER = Pattern.compile("\\bsweet ?clover\\b", Pattern.CASE_INSENSITIVE);
    private static final Pattern MOLD = Pattern.compile("\\bmou?ld", Pattern.CASE_INSENSITIVE);
    private static final Source FROM_MEMORY =
            Source.memory("as veterinary texts give it: ergot, moldy sweetclover, vitamin A, selenium, sulfur");
    private static final Source NITRATE = Source.read(
            "Feeding high-nitrate hay, Nebraska Extension (Anderson): blend it, never one high bale and one low one free"
                    + " choice; small meals; far less after a storm or a day off feed");

    /** Hay kept longer has lost its vitamin A. */
    private static final int OLD_MONTHS = 12;

    /** mg a liter of sulfate above which distillers grains and canola wait for the sulfur sum. */
    private static final double SULFATE = 1000;

    /** ppm of selenium below which a forage is short, and from which none is added. */
    private static final double SELENIUM_SHORT = 0.1;

    private static final double SELENIUM_PLENTY = 2;

    private final Yard yard;
    private final Diet diet;
    private final List<Portion> portions;
    private final List<Caution> found = new ArrayList<>();

    private FeedingDangers(Yard yard, Diet diet, List<Portion> portions) {
        this.yard = yard;
        this.diet = diet;
        this.portions = portions;
    }

    /** @param portions what is fed of that diet, or now */
    public static List<Caution> of(Yard yard, Diet diet, List<Portion> portions) {
        var dangers = new FeedingDangers(yard, diet, portions);
        dangers.nitrateOrder();
        dangers.nitrate();
        dangers.namedFeeds();
        dangers.vitaminA();
        dangers.selenium();
        dangers.water();
        return List.copyOf(dangers.found);
    }

    /** Of these, in which order feed high in nitrate goes out, and to whom never. */
    public static List<Caution> ofNitrate(Yard yard, Diet diet, List<Portion> portions) {
        var dangers = new FeedingDangers(yard, diet, portions);
        dangers.nitrateOrder();
        return List.copyOf(dangers.found);
    }

    /** Whether its name, its notes or one place in it say that it may hold what the lot's own figures do not show. */
    public static boolean mayHide(Yard yard, Diet diet, Feed feed) {
        var dangers = new FeedingDangers(yard, diet, List.of());
        var said = dangers.said(feed);
        return ERGOT.matcher(said).find()
                || SWEETCLOVER.matcher(said + " " + dangers.notes(feed)).find()
                || MOLD.matcher(dangers.notes(feed)).find()
                || dangers.hot(feed) != null;
    }

    private void say(String words, Source source) {
        found.add(new Caution(words, source));
    }

    private void nitrateOrder() {
        boolean grain = portions.stream().anyMatch(p -> p.feed().feed().feedClass() == FeedClass.GRAIN);
        for (var portion : portions) {
            var feed = portion.feed().feed();
            switch (HowNitrateIsFed.of(feed, diet)) {
                case MIXED ->
                    say(
                            "Mix %s into the rest at every feeding. Never feed it alone or on alternate days."
                                    .formatted(feed.name()),
                            NITRATE);
                case SECOND ->
                    say(
                            "Feed %s second, after most of the other hay is eaten%s. Never damp. Never to hungry or thin cattle, or after a storm."
                                    .formatted(feed.name(), grain ? ", with some grain" : ""),
                            NITRATE);
                case FREE, OUT -> {}
            }
        }
    }

    private void nitrate() {
        for (var portion : portions) {
            var hot = hot(portion.feed().feed());
            if (hot != null) {
                say(
                        "One place in %s had %,.0f ppm nitrate (NO3-N). Test bales near it before they are fed; ask the vet."
                                .formatted(portion.feed().feed().name(), hot),
                        NITRATE);
            }
        }
        if (yard.ranch().outfit().mixing().mixes()) {
            return;
        }
        var second = portions.stream()
                .map(p -> p.feed().feed())
                .filter(feed -> HowNitrateIsFed.of(feed, diet) == HowNitrateIsFed.SECOND)
                .toList();
        for (var feed : second) {
            double found = HowNitrateIsFed.found(feed, diet);
            double counted = HowNitrateIsFed.counted(feed, diet);
            say(
                    "%s has %,.0f ppm nitrate (NO3-N)%s."
                            .formatted(
                                    feed.name(),
                                    found,
                                    Math.round(counted) == Math.round(found)
                                            ? ""
                                            : " and counts as %,.0f, for what a test can miss".formatted(counted)),
                    NITRATE);
        }
        if (!second.isEmpty()
                || diet.leftOut().stream().anyMatch(l -> l.feed().composition().knows(Analyte.NO3N))) {
            var limits = HowNitrateIsFed.unmixedLimits(diet.need());
            say(
                    "Not mixed, feed may test %,.0f ppm (NO3-N) alone, %,.0f as second feed."
                            .formatted(limits[0], limits[1]),
                    NITRATE);
        }
    }

    /** ppm NO3-N of the worst single place tested; null where none was. */
    private @Nullable Double hot(Feed feed) {
        var lot = lot(feed);
        return lot == null ? null : yard.composition(lot).single().get(Analyte.NO3N);
    }

    private String said(Feed feed) {
        return feed.name() + " " + row(feed).map(FeedBook.Row::feed).orElse("");
    }

    private void namedFeeds() {
        for (var portion : portions) {
            var feed = portion.feed().feed();
            var said = said(feed);
            if (ERGOT.matcher(said).find() && feed.feedClass() != FeedClass.STRAW) {
                say(
                        "Look for black ergot in %s. Lame, hot or slow cattle: stop it and call the vet."
                                .formatted(feed.name()),
                        FROM_MEMORY);
            }
            if (SWEETCLOVER.matcher(said + " " + notes(feed)).find()) {
                say(
                        "No moldy sweetclover: it thins the blood. None to cows near calving or cattle to be cut.",
                        FROM_MEMORY);
            }
        }
    }

    private void vitaminA() {
        for (var portion : portions) {
            var feed = portion.feed().feed();
            var lot = lot(feed);
            boolean old = lot != null
                    && (lot.weathered() != null
                            || isOld(lot.madeOn())
                            || lot.nitrateRisk() && feed.feedClass().isHay());
            if (feed.feedClass() == FeedClass.STRAW || old) {
                say("%s is low in vitamin A: check the mineral.".formatted(feed.name()), FROM_MEMORY);
                return;
            }
        }
    }

    private boolean isOld(@Nullable LocalDate made) {
        return made != null && made.plusMonths(OLD_MONTHS).isBefore(yard.day());
    }

    private void selenium() {
        for (var portion : portions) {
            var feed = portion.feed().feed();
            var measured = feed.composition().values().get(Analyte.SE);
            if (measured == null || !feed.feedClass().isForage()) {
                continue;
            }
            if (measured.value() >= SELENIUM_PLENTY) {
                say("%s is high in selenium. Add none, and ask the vet.".formatted(feed.name()), FROM_MEMORY);
            } else if (measured.value() < SELENIUM_SHORT) {
                say(
                        "%s is short of selenium. Ask the vet how to add it; too much kills.".formatted(feed.name()),
                        FROM_MEMORY);
            }
        }
    }

    private void water() {
        boolean sulfur = portions.stream()
                .map(p -> p.feed().feed())
                .anyMatch(f -> f.feedClass() == FeedClass.DISTILLERS_GRAINS
                        || f.feedClass() == FeedClass.PROTEIN_MEAL && f.name().matches("(?i).*(canola|rape).*"));
        double sulfate = most(Hazard.SO4W);
        if (sulfur && sulfate > SULFATE) {
            say(
                    "The water is high in sulfate: no distillers grains or canola with it until sulfur is checked.",
                    FROM_MEMORY);
        }
        int month = yard.day().getMonthValue();
        if ((month == 12 || month <= 3) && (sulfate > SULFATE / 2 || most(Hazard.TDS) > SULFATE)) {
            say("Under ice the water gets saltier. Test it again in midwinter.", FROM_MEMORY);
        }
    }

    private double most(Hazard hazard) {
        return yard.ranch().waters().values().stream()
                .map(WaterSource::found)
                .mapToDouble(all -> all.getOrDefault(hazard, 0.0))
                .max()
                .orElse(0);
    }

    private @Nullable Lot lot(Feed feed) {
        return yard.ranch().lots().get(UUID.fromString(feed.id()));
    }

    private String notes(Feed feed) {
        var lot = lot(feed);
        return lot == null ? "" : lot.notes();
    }

    private Optional<FeedBook.Row> row(Feed feed) {
        var lot = lot(feed);
        var sale = yard.ranch().feedsForSale().get(UUID.fromString(feed.id()));
        var named = lot != null ? lot.bookRow() : sale != null ? sale.bookRow() : "";
        return named.isBlank() ? Optional.empty() : FeedBook.published().row(named);
    }
}
