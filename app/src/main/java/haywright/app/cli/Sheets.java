package haywright.app.cli;

import haywright.app.document.Patch;
import haywright.app.document.RanchDocument;
import haywright.app.exchange.gpx.Gpx;
import haywright.app.report.FieldSheet;
import haywright.app.store.SaveAnswer;
import haywright.app.store.Store;
import haywright.app.web.Desk;
import haywright.cattle.herd.Group;
import haywright.forage.Analyte;
import haywright.outlook.LotSubject;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Field;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.Sampling;
import haywright.sampling.Aim;
import haywright.sampling.SamplingPlan;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
import haywright.workings.Refused;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Field sheets and walks for the terminal. */
final class Sheets {
    private Sheets() {}

    /** The newest sheet of the lot; where there is none, one by the usual plan, kept so that it can come back. */
    static FieldSheet newest(Store store, Ranch ranch, @Nullable String lotName, Clock clock) {
        var lot = lot(ranch, lotName);
        var made = ranch.samplingsOf(lot.id());
        if (!made.isEmpty()) {
            return FieldSheet.of(ranch, made.get(made.size() - 1));
        }
        var subject = LotSubject.of(lot);
        var composition = new Yard(ranch, ranch.settings().today(LocalDate.now(clock))).composition(lot);
        boolean danger = lot.isNitrateDanger() && !composition.composition().knows(Analyte.NO3N);
        var plan = SamplingPlan.of(subject, Aim.usual(subject, danger));
        var today = ranch.settings().today(LocalDate.now(clock));
        var sampling = Sampling.of(plan, UUID.randomUUID(), lot.id(), lot.name(), today);
        return FieldSheet.of(kept(store, ranch, lot, sampling), sampling);
    }

    static Lot lot(Ranch ranch, @Nullable String name) {
        return one("lot", ranch, ranch.lots(), Lot::name, name);
    }

    private static Ranch kept(Store store, Ranch ranch, Lot lot, Sampling sampling) {
        var documents = new RanchDocument();
        var with = ranch.with(sampling);
        var words = "Field sheet made: %s, %s".formatted(lot.name(), sampling.code());
        var patch = Patch.between(documents.tree(ranch), documents.tree(with));
        long rev = store.ranches().open(ranch.id()).rev();
        if (store.ranches().save(ranch.id(), rev, Desk.WHO, words, patch) instanceof SaveAnswer.Saved) {
            return with;
        }
        throw new Refused("lot", lot.name(), "the ranch was changed at this moment", "Try again.");
    }

    static Field field(Ranch ranch, @Nullable String name) {
        return one("field", ranch, ranch.fields(), Field::name, name);
    }

    static String gpx(Field field, int seed) {
        var shape = FieldShape.of(field.boundary());
        var advice = FieldWalk.advised(Unit.SQUARE_METER.to(Unit.ACRE, shape.squareMeters()), false);
        return new Gpx(field.name(), List.of(FieldWalk.of(shape, advice.stops(), seed))).text();
    }

    static Group group(Ranch ranch, @Nullable String name) {
        return one("group", ranch, ranch.groups(), Group::name, name);
    }

    /** By its name or its id; the only one where neither is given. */
    private static <T> T one(
            String what, Ranch ranch, Map<UUID, T> all, Function<T, String> naming, @Nullable String name) {
        if (name == null && all.size() == 1) {
            return all.values().iterator().next();
        }
        var found = all.entrySet().stream()
                .filter(one -> naming.apply(one.getValue()).equalsIgnoreCase(name)
                        || one.getKey().toString().equals(name))
                .toList();
        if (found.size() == 1) {
            return found.get(0).getValue();
        }
        if (found.isEmpty()) {
            throw new Refused(
                    what,
                    name == null ? "no name" : name,
                    "%s has no %s of this name".formatted(ranch.name(), what),
                    all.isEmpty()
                            ? "It has no %s yet.".formatted(what)
                            : "Its %ss: ".formatted(what)
                                    + all.values().stream().map(naming).collect(Collectors.joining(", ")) + ".");
        }
        throw new Refused(
                what,
                String.valueOf(name),
                "%s has %d of this name".formatted(ranch.name(), found.size()),
                "Give the id of the one you mean, as the address of its page has it: "
                        + found.stream().map(one -> one.getKey().toString()).collect(Collectors.joining(", ")) + ".");
    }
}
