package haywright.app.report;

import haywright.app.words.DateWords;
import haywright.app.words.NumberWords;
import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Regain;
import haywright.diet.DietRow;
import haywright.feeding.ColdSnap;
import haywright.feeding.Offer;
import haywright.feeding.Offers;
import haywright.feeding.hay.ShortOfHay;
import haywright.forage.Analyte;
import haywright.quantity.Unit;
import haywright.ration.HandMix;
import haywright.ration.NoRation;
import haywright.ration.Ration;
import haywright.ration.RationAnswer;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Why a letter says what it says: what it costs, what it is surer or richer than, and how long it lasts.
 *
 * @param answer a ration, or what stands in its way
 * @param mix the ration in amounts that can be weighed out; empty where there is none
 * @param now what the group gets today, if anybody has said it
 */
record LetterWhy(
        Offers offers,
        Group group,
        RationAnswer answer,
        Optional<HandMix> mix,
        Optional<HandMix> now,
        SpokenFeeds names) {
    /** Score below which bulls are thin (common practice, no source). */
    private static final double BULLS = 5;

    /** Percent by which one way is surer than another before it is said. */
    private static final double SURER = 10;

    static LetterWhy of(LetterWords words) {
        return new LetterWhy(words.offers(), words.group(), words.answer(), words.mix(), words.now(), words.names());
    }

    /** To what score thin cattle are brought, and how far these feeds do not bring them; that others hold, and what more would take. */
    Optional<String> thin() {
        boolean calves = group.animals().calves();
        double score = group.conditionScore();
        double wanted = calves ? Math.max(Regain.usual(group), Regain.planned(group)) : BULLS;
        if (!(answer instanceof Ration) || group.animals() == AnimalClass.GROWING || score >= wanted) {
            return Optional.empty();
        }
        double reached = Regain.planned(offers.planned());
        if (Regain.of(offers.planned(), offers.yard().day()).isPresent()) {
            var brings = "This brings them from score %s to %s by calving"
                    .formatted(NumberWords.halves(score), NumberWords.halves(Math.floor(2 * reached) / 2));
            return Optional.of(
                    reached < Regain.planned(group) ? brings + "; more takes richer feed: call." : brings + ".");
        }
        double half = Math.rint(2 * score) / 2;
        var holds = (half < wanted ? "They stay at score %s" : "They stay just under score %s")
                .formatted(NumberWords.halves(Math.min(half, wanted)));
        return Optional.of(Regain.of(group.wanting(wanted), offers.yard().day())
                .filter(regain -> calves)
                .map(regain ->
                        "%s; %s by calving takes %s.".formatted(holds, NumberWords.halves(wanted), takes(regain)))
                .orElse(holds + "."));
    }

    /** More of the hay that is named for the cold, where it fits in and is no more than hay can do. */
    private String takes(Regain regain) {
        var hay = offers.cold().flatMap(ColdSnap::hay);
        double kg = hay.map(feed -> feed.putOut(regain.nem()
                        / feed.feed().composition().value(Analyte.NEM).orElseThrow()))
                .orElse(Double.POSITIVE_INFINITY);
        if (regain.isFast() || !(kg <= offers.cold().map(ColdSnap::most).orElse(0.0))) {
            return "richer feed than this: call";
        }
        double pounds = Math.max(1, Math.rint(Unit.POUND.fromBase(kg)));
        return "about %s pound%s a head more %s"
                .formatted(
                        NumberWords.of((int) pounds),
                        pounds == 1 ? "" : "s",
                        names.spoken(hay.orElseThrow().feed()));
    }

    /** As the bench has it. @param inFigures whether the page holds one more number; else the part of the month is said */
    Optional<String> shortOfHay(boolean inFigures) {
        try {
            return ShortOfHay.of(offers.rations(), ShortOfHay.Asked.NOTHING)
                    .filter(ShortOfHay::isShort)
                    .map(hay -> hay.gone()
                            .map(day -> "%s, all hay is gone by %s."
                                    .formatted(
                                            hay.isFedNowSaid() ? "As fed now" : "By today’s rations",
                                            inFigures ? Show.day(day) : DateWords.part(day)))
                            .orElse("Hay does not last until turnout."));
        } catch (Refused refused) {
            return Optional.empty(); // the page of short hay says why
        }
    }

    List<String> why(long numbersLeft) {
        var says = new ArrayList<String>();
        if (answer instanceof Ration) {
            var fed = mix.orElseThrow();
            if (numbersLeft > 0) {
                says.add("This costs %s per head per day.".formatted(Show.dollars(fed.cost())));
            }
            offers.sure().ifPresent(sure -> says.add(Show.capital(NumberWords.enough(sure.holdsPercent())) + "."));
            PlainLimits.shortOf(fed)
                    .ifPresent(of -> says.add("Rounded to what can be weighed, it is a hair %s.".formatted(of)));
        } else {
            var no = (NoRation) answer;
            boolean onlyWishes = !no.conflicts().isEmpty()
                    && no.conflicts().stream().allMatch(c -> c.row().kind() == DietRow.Kind.CHOICE);
            says.add(
                    onlyWishes
                            ? "Can’t be done with what’s allowed."
                            : "No mix of the feeds at hand gives them all they need.");
            says.add(PlainLimits.standsInTheWay(no));
            now.flatMap(PlainLimits::they).ifPresent(says::add);
        }
        return says;
    }

    /** In words, where the page holds no more figures. */
    Optional<String> price() {
        return mix.filter(fed -> answer instanceof Ration)
                .map(fed -> "This costs %s per head per day.".formatted(NumberWords.dollars(fed.cost())));
    }

    /** {@code Pivot hay lasts to mid February; Barley straw to late February.}: days without figures, the page holds no more. */
    Optional<String> lasts() {
        return offers.sure()
                .map(Offer::gone)
                .filter(gone -> !gone.isEmpty())
                .map(gone -> gone.entrySet().stream()
                        .limit(2)
                        .map(e -> names.spoken(e.getKey().feed()) + " to " + DateWords.part(e.getValue()))
                        .collect(Collectors.joining("; ", "Lasts: ", ".")));
    }

    /** What is short now comes first: what it costs says nothing then. */
    String against(HandMix fed, HandMix today, boolean inDollars) {
        var lacks = PlainLimits.they(today);
        if (lacks.isPresent()) {
            return "As fed now, " + lacks.get().substring(0, 1).toLowerCase(Locale.US)
                    + lacks.get().substring(1).replace("hey’re", "hey are"); // a paper may break a line after the ’
        }
        double saves = today.cost() - fed.cost();
        var money = Math.abs(saves) < 0.005
                ? "What they get now costs the same"
                : "What they get now costs %s%s"
                        .formatted(inDollars ? money(Math.abs(saves)) + " " : "", saves > 0 ? "more" : "less");
        double more = offers.now().orElseThrow().holdsPercent()
                - offers.sure().orElseThrow().holdsPercent();
        return money + (Math.abs(more) < SURER ? "." : more > 0 ? ", and is surer." : ", and is less sure.");
    }

    private static String money(double dollars) {
        return dollars < 0.995 ? Show.number(100 * dollars, 0) + " cents" : Show.dollars(dollars);
    }

    Optional<String> stage() {
        if (!(answer instanceof Ration ration)) {
            return Optional.empty();
        }
        var need = ration.diet().need();
        if (need.milkingShare() > 0.5) {
            return Optional.of("They are in milk.");
        }
        return need.animals() == AnimalClass.GROWING ? Optional.of("They’ll gain what you want.") : Optional.empty();
    }
}
