package haywright.app.web.lab;

import haywright.app.words.Show;
import haywright.cattle.RequirementSystem;
import haywright.diet.MineralsAlone;
import haywright.forage.Composition;
import haywright.forage.hazard.MineralTies;
import haywright.forage.hazard.MineralTies.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the minerals measured in a feed would do: by themselves, and to each other. */
final class MineralView {
    private MineralView() {}

    /** @param measured what is the feed's own */
    static List<HazardView> of(Composition measured) {
        var views = new ArrayList<HazardView>();
        alone(measured).ifPresent(views::add);
        var found = new MineralTies(measured).findings();
        for (var tie : Tie.values()) {
            tied(tie, found.stream().filter(f -> f.tie() == tie).toList()).ifPresent(views::add);
        }
        return views;
    }

    private static Optional<HazardView> tied(Tie tie, List<MineralTies.Finding> found) {
        if (found.isEmpty()) {
            return Optional.empty();
        }
        var title = switch (tie) {
            case COPPER -> "Copper is tied up, if they ate nothing else";
            case TETANY -> "Grass tetany, if they ate nothing else";
            case CALCIUM -> "Calcium against phosphorus, if they ate nothing else";
        };
        var then = switch (tie) {
            case COPPER ->
                "Cattle can run short of copper that the feed has enough of. Ask your veterinarian or nutritionist which"
                        + " mineral to give: too much copper harms too.";
            case TETANY ->
                "Cows near calving and in milk are in danger. Keep magnesium in front of them at all times; a cow that"
                        + " staggers or is down needs a veterinarian at once.";
            case CALCIUM ->
                "Many hays have more than seven to one, and cattle do fine on it as long as they get enough phosphorus: let the mineral mix supply it.";
        };
        return Optional.of(new HazardView(
                title,
                false,
                tie != Tie.CALCIUM && found.stream().anyMatch(MineralTies.Finding::clear),
                found.stream()
                        .map(f -> new HazardView.Line(Show.capital(f.words()), HazardView.from(f.source())))
                        .toList(),
                null,
                then));
    }

    /** The minerals that a mix has to bring and those that are too much. */
    private static Optional<HazardView> alone(Composition measured) {
        var off = new MineralsAlone(measured, RequirementSystem.USUAL)
                .findings().stream().filter(f -> f.isShort() || f.isTooMuch()).toList();
        if (off.isEmpty()) {
            return Optional.empty();
        }
        boolean tooMuch = off.stream().anyMatch(MineralsAlone.Finding::isTooMuch);
        return Optional.of(new HazardView(
                "Minerals, if dry cows ate nothing else",
                false,
                tooMuch,
                off.stream()
                        .map(f -> new HazardView.Line(
                                "%s: %s %s, %s"
                                        .formatted(
                                                f.isShort()
                                                        ? "Short of "
                                                                + f.nutrient().words()
                                                        : "Too much "
                                                                + f.nutrient().words(),
                                                Show.significant(f.has(), 3),
                                                f.need().unit().symbol(),
                                                f.isShort()
                                                        ? "and they need "
                                                                + Show.significant(
                                                                        f.need().share(), 3)
                                                        : "and more than %s can harm"
                                                                .formatted(Show.significant(
                                                                        f.need()
                                                                                .tolerated()
                                                                                .orElseThrow(),
                                                                        3))),
                                HazardView.from(f.need().source())))
                        .toList(),
                null,
                tooMuch ? HazardView.ASK_VET : "A mineral mix should supply these."));
    }

    /** "1.6 to 1", with a digit more below 1, where so little decides; empty where it is not known. */
    static String toOne(OptionalDouble ratio) {
        return ratio.isEmpty() ? "" : Show.number(ratio.getAsDouble(), ratio.getAsDouble() < 1 ? 2 : 1) + " to 1";
    }
}
