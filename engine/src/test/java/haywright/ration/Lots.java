package haywright.ration;

import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.Lactation;
import haywright.cattle.LiveWeight;
import haywright.cattle.Pregnancy;
import haywright.cattle.RequirementSystem;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.cold.Hide;
import haywright.cattle.need.Need;
import haywright.cattle.need.Requirement;
import haywright.diet.Feed;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.lab.Reading;
import haywright.forage.lot.LotComposition;
import haywright.forage.lot.LotDistribution;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Feeds and cattle of this room's tests: figures stated, the rest from a row of the feed book. */
final class Lots {
    static final double LB = Unit.POUND.toBase(1);

    /** Mean temperature of the month and of the day in °C that changes nothing. */
    static final double MILD = 20;

    private Lots() {}

    /**
     * A feed that is what is stated of it, and no danger.
     *
     * @param row of the feed book, for what is not stated; blank for the usual one of the kind
     * @param dollars a ton as fed
     * @param figures percent of dry matter; dry matter of the feed as fed
     */
    static PricedFeed lot(String name, FeedClass kind, String row, double dollars, Map<Analyte, Double> figures) {
        return lot(name, kind, row, dollars, figures, Map.of());
    }

    /** @param sd how far the figures may lie, where it is not as far as loads of the kind differ */
    static PricedFeed lot(
            String name,
            FeedClass kind,
            String row,
            double dollars,
            Map<Analyte, Double> figures,
            Map<Analyte, Double> sd) {
        var book = row.isEmpty()
                ? FeedBook.published().usual(kind)
                : FeedBook.published().row(row);
        var readings = new ArrayList<Reading>();
        new TreeMap<>(figures)
                .forEach((analyte, value) -> readings.add(new Reading(
                        analyte, value, analyte.unit(), analyte == Analyte.DM ? Basis.AS_RECEIVED : Basis.DRY_MATTER)));
        var made = LotComposition.ofTag(kind, book, "a test's own figures", readings)
                .spread(sd);
        var feed = new Feed(name, name, kind, made.composition(), false, Optional.of(LotDistribution.of(made)));
        return new PricedFeed(
                feed, Unit.DOLLAR_PER_TON.to(Unit.DOLLAR_PER_KG, dollars), PricedFeed.dryMatterOf(feed), 0);
    }

    static PricedFeed hay(String name, double dollars, double tdn, double cp) {
        return lot(name, FeedClass.GRASS_HAY, "", dollars, Map.of(Analyte.TDN, tdn, Analyte.CP, cp));
    }

    static PricedFeed straw(double dollars) {
        return lot("barley straw", FeedClass.STRAW, "", dollars, Map.of());
    }

    static PricedFeed barley(double dollars) {
        return lot("barley", FeedClass.GRAIN, "", dollars, Map.of());
    }

    static PricedFeed distillers(double dollars) {
        return lot("distillers grains", FeedClass.DISTILLERS_GRAINS, "", dollars, Map.of());
    }

    static PricedFeed alfalfa(double dollars) {
        return lot("alfalfa", FeedClass.LEGUME_HAY, "", dollars, Map.of());
    }

    /** @param lost percent of what is put out. @param handling dollars a ton */
    static PricedFeed fed(PricedFeed feed, double lost, double handling, boolean own) {
        return new PricedFeed(
                feed.feed(),
                feed.pricePerKgAsFed(),
                feed.dryMatterPercent(),
                lost,
                Unit.DOLLAR_PER_TON.to(Unit.DOLLAR_PER_KG, handling),
                own,
                Double.POSITIVE_INFINITY,
                0,
                Double.POSITIVE_INFINITY);
    }

    static List<PricedFeed> withMineral(PricedFeed... feeds) {
        return UsualMineral.beside(List.of(feeds));
    }

    /** @param pounds full weight. @param day of gestation; 0 for open. @param week in milk; 0 for dry */
    static Animal cow(double pounds, double day, double week) {
        return of(AnimalClass.MATURE_COW, pounds, pounds, day, week, 0);
    }

    /** A calf that is meant to grow to 1,250 lb. */
    static Animal calf(double pounds, double gain) {
        return of(AnimalClass.GROWING, pounds, 1250, 0, 0, gain);
    }

    /** @param gain pounds a day */
    static Animal of(AnimalClass animals, double pounds, double mature, double day, double week, double gain) {
        return new Animal(
                animals,
                Breed.AVERAGE,
                LiveWeight.full(pounds * LB),
                5,
                day > 0 ? new Pregnancy(38, day) : null,
                week > 0 ? new Lactation(week, 20 * LB, Lactation.USUAL_PEAK_WEEK) : null,
                gain * LB,
                mature * LB,
                Animal.NO_ACCLIMATIZATION);
    }

    static Need mild(Animal animal) {
        return new Requirement(animal, RequirementSystem.NRC_1996);
    }

    /** In a dry winter coat and a wind of 5 mph, on a day and after a month of so many °C. */
    static Need cold(Animal animal, double celsius) {
        return new Requirement(
                animal.after(celsius),
                RequirementSystem.NRC_1996,
                List.of(new Exposure(celsius, 8, Coat.WINTER, Hide.DRY, false, ColdSystem.USUAL)));
    }
}
