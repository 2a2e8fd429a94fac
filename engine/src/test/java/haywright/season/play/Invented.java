package haywright.season.play;

import haywright.cattle.AnimalClass;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.herd.Group;
import haywright.forage.FeedClass;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedNow;
import haywright.ranch.FeedForSale;
import haywright.ranch.FoundPlace;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import haywright.ranch.Settings;
import haywright.sampling.stock.Stock;
import haywright.season.given.Season;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** An invented ranch: a hundred cows and thirty heifer calves, ten weeks before grass, in the winters of one town. */
public final class Invented {
    public static final LocalDate DAY = LocalDate.of(2027, 2, 22);
    public static final LocalDate GRASS = LocalDate.of(2027, 5, 1);
    public static final UUID HAY = new UUID(0, 1);
    public static final UUID COWS = new UUID(1, 1);

    private Invented() {}

    public static Group cows(int head) {
        return group(1, AnimalClass.MATURE_COW, head, 1300, 0, true);
    }

    private static Group group(int id, AnimalClass animals, int head, double pounds, double gain, boolean due) {
        return new Group(
                new UUID(1, id),
                "group " + id,
                animals,
                head,
                Quantity.of(pounds, Unit.POUND),
                false,
                DAY,
                Quantity.of(1300, Unit.POUND),
                5,
                "Angus",
                due ? List.of(new Group.CalvingWeek(LocalDate.of(2027, 3, 29), head)) : List.of(),
                null,
                null,
                null,
                Quantity.of(gain, Unit.POUND_A_DAY),
                null,
                null,
                null,
                null,
                List.of());
    }

    private static Lot lot(UUID id, String name, FeedClass kind, double tons, double dollars) {
        return new Lot(
                id,
                name,
                kind,
                "",
                "",
                "",
                null,
                Lot.Storage.OUTSIDE_ON_GROUND,
                new Stock.Bales(
                        Stock.BaleKind.LARGE_ROUND, (int) (tons * 2), Quantity.of(1000, Unit.POUND), null, null, null),
                Quantity.of(dollars, Unit.DOLLAR_PER_TON),
                false,
                "",
                null,
                null,
                List.of());
    }

    private static FeedForSale sale(int id, String name, FeedClass kind, double dollars, double tons) {
        return new FeedForSale(
                new UUID(2, id),
                name,
                kind,
                "",
                List.of(),
                Quantity.of(dollars, Unit.DOLLAR_PER_TON),
                Quantity.of(tons, Unit.TON),
                "");
    }

    /** @param warmer how much milder than the town, all year, °C. @param tons of the main stack */
    public static Ranch ranch(double tons, double warmer) {
        var place = FoundPlace.of("Valentine, NE", null, warmer);
        var weather = new RanchWeather(
                "Valentine, NE", List.of(), null, null, true, ColdSystem.RULE_OF_THUMB, null, List.of(), place);
        var usual = Ranch.empty(new UUID(0, 9), "A ranch").settings();
        return Ranch.empty(new UUID(0, 9), "A ranch")
                .with(new Settings(true, DAY, usual.system(), "", 15, GRASS, weather, null, null, null))
                .with(cows(100))
                .with(group(2, AnimalClass.GROWING, 30, 600, 1, false))
                .with(lot(HAY, "Meadow hay", FeedClass.GRASS_HAY, tons, 130))
                .with(lot(new UUID(0, 2), "Alfalfa", FeedClass.LEGUME_HAY, 20, 200))
                .with(sale(1, "Cake", FeedClass.CAKE, 400, 20))
                .with(sale(2, "Barley", FeedClass.GRAIN, 250, 20))
                .with(new FedNow(COWS, Map.of(HAY, Quantity.of(32, Unit.POUND_A_DAY))));
    }

    public static Season season(double tons, double warmer) {
        return Season.of(new Yard(ranch(tons, warmer), DAY));
    }
}
