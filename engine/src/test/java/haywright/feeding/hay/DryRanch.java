package haywright.feeding.hay;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.forage.FeedClass;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.ranch.Lot;
import haywright.sampling.stock.Stock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/** What invented ranches that are short of hay are made of. */
final class DryRanch {
    static final LocalDate DAY = LocalDate.of(2026, 12, 1);

    private DryRanch() {}

    /** @param gain lb a day */
    static Group group(
            int id, AnimalClass animals, int head, double pounds, double score, List<CalvingWeek> due, double gain) {
        return new Group(
                new UUID(1, id),
                "group " + id,
                animals,
                head,
                Quantity.of(pounds, Unit.POUND),
                false,
                DAY,
                Quantity.of(1300, Unit.POUND),
                score,
                "Angus",
                due,
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

    /** @param dollars a ton */
    static FeedForSale sale(UUID id, String name, FeedClass kind, double dollars, double tons) {
        return new FeedForSale(
                id,
                name,
                kind,
                "",
                List.of(),
                Quantity.of(dollars, Unit.DOLLAR_PER_TON),
                Quantity.of(tons, Unit.TON),
                "");
    }

    /** In a barn, at $180 a ton. */
    static Lot lot(UUID id, String name, FeedClass kind, double tons) {
        return new Lot(
                id,
                name,
                kind,
                "",
                "",
                "",
                null,
                Lot.Storage.BARN,
                new Stock.Weighed(Quantity.of(tons, Unit.TON)),
                Quantity.of(180, Unit.DOLLAR_PER_TON),
                false,
                "",
                null,
                null,
                List.of());
    }
}
