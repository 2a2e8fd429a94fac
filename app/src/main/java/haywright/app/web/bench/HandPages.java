package haywright.app.web.bench;

import haywright.app.report.picture.StripPicture;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.feeding.Offer;
import haywright.feeding.Offers;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedNow;
import haywright.ration.MixDifference;
import haywright.ration.Portion;
import haywright.ration.UsualMineral;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A mix by hand, judged beside the ration by the same limits: at once where scripts are on, by a button where not. */
public final class HandPages {
    private static final String HAND = "haywright/app/web/bench/hand.jte";

    /** Cents below which two mixes cost the same. */
    private HandPages() {}

    static void routes(Routes on) {
        on.get("bench/{group}/hand", HandPages::hand);
        on.post("bench/{group}/hand", HandPages::judge);
    }

    /**
     * @param often boxes of what is fed now or in the ration
     * @param others boxes of all other feeds
     * @param judged null where nothing is typed, or something cannot be read
     */
    public record View(
            Group group,
            Form form,
            List<Ask> often,
            List<Ask> others,
            @Nullable Judged judged) {}

    /**
     * @param shortfalls empty where it meets everything
     * @param cards mine, then the ration where there is one
     * @param mineral what was counted that nobody typed; empty for most
     * @param why the difference in cost, a feed each; empty where there is no ration or none
     */
    public record Judged(
            String cost,
            String holds,
            List<String> shortfalls,
            List<Card> cards,
            List<String> why,
            String mineral,
            StripPicture strips) {}

    private static Group group(Page page) {
        return page.find(page.ranch().groups(), "group");
    }

    private static String key(Group group) {
        return "bench/" + group.id() + "/hand";
    }

    private static void hand(Page page) {
        var group = group(page);
        var form = page.form(key(group), () -> HandForm.known(page.ranch(), group));
        var now = page.ranch().fedNow().get(group.id());
        page.show(HAND, view(page, group, form, now == null ? Map.of() : now.amounts()));
    }

    private static View view(Page page, Group group, Form form, Map<UUID, Quantity> amounts) {
        var offers = page.offers(group);
        var often = new ArrayList<Ask>();
        var others = new ArrayList<Ask>();
        var asks = HandForm.asks(page.ranch());
        Judged judged = null;
        try {
            var used = Stream.concat(offers.now().stream(), offers.sure().stream())
                    .flatMap(offer -> offer.mix().portions().stream())
                    .map(p -> "feed-" + p.feed().feed().id())
                    .toList();
            asks.forEach(ask -> (used.contains(ask.name()) || !form.isEmpty(ask) ? often : others).add(ask));
            if (!amounts.isEmpty() && !form.hasProblems()) {
                var mineral = mineral(offers);
                var all = new LinkedHashMap<>(amounts);
                mineral.ifPresent(
                        portion -> all.put(UsualMineral.ID, Quantity.of(portion.kgPutOut(), Unit.KILOGRAM_A_DAY)));
                judged = judged(offers, offers.offer(page.rations().judge(group, all)), mineral);
            }
        } catch (Refused refused) {
            refused.problems().forEach(p -> form.refuse(p.field(), p.value(), p.rule(), p.fix()));
        }
        return often.isEmpty()
                ? new View(group, form, asks, List.of(), judged)
                : new View(group, form, often, others, judged);
    }

    /** Judges what was typed; on the other button keeps it as what the group is fed now. */
    private static void judge(Page page) {
        var group = group(page);
        var form = page.posted(key(group));
        form.isOneAnswer(); // half of one mix and half of another is a mix that nobody chose
        var amounts = HandForm.read(form, page.ranch());
        boolean live = page.http().header("HX-Request") != null;
        if (amounts.isEmpty()) {
            var view = view(page, group, form, Map.of());
            if (live) {
                page.show(HAND, view);
            } else {
                page.reject(form, HAND, view);
            }
            return;
        }
        if ("keep".equals(page.http().formParam("act"))) {
            var fed = new FedNow(group.id(), amounts.get());
            page.save(
                    form, "What is fed now changed: " + group.name(), ranch -> ranch.with(fed), "bench/" + group.id());
            return;
        }
        page.show(HAND, view(page, group, form, amounts.get()));
    }

    /** Where the ranch lists none, so that there is no box for it, a mix is judged with what the ration has of a usual one. */
    private static Optional<Portion> mineral(Offers offers) {
        return offers.sure().stream()
                .flatMap(sure -> sure.mix().portions().stream())
                .filter(portion -> UsualMineral.is(portion.feed()))
                .findFirst();
    }

    private static Judged judged(Offers offers, Offer mine, Optional<Portion> mineral) {
        var shown = new LinkedHashMap<String, Offer>();
        shown.put("Your mix", mine);
        offers.sure().ifPresent(sure -> shown.put("The ration", sure));
        return new Judged(
                Show.dollars(mine.mix().cost()),
                MixWords.enough(mine),
                BenchView.shortfalls(offers, mine),
                Card.of(offers, shown),
                offers.sure().map(sure -> why(mine, sure)).orElse(List.of()),
                mineral.map(portion -> "Counted with %s, as the ration has it: no mineral is on your list."
                                .formatted(MixWords.portion(offers.yard(), offers.group(), portion)))
                        .orElse(""),
                new StripPicture("strips", offers.suppliesOf(mine.mix())));
    }

    private static List<String> why(Offer mine, Offer sure) {
        var apart = MixDifference.between(sure.mix().portions(), mine.mix().portions());
        if (apart.parts().isEmpty()) {
            return List.of();
        }
        var says = new ArrayList<String>();
        says.add(
                apart.cents() == 0
                        ? "The two cost the same."
                        : "Your mix costs %s %s than the ration. Feed by feed:"
                                .formatted(cents(apart.cents()), apart.cents() > 0 ? "more" : "less"));
        apart.parts().stream().map(HandPages::part).forEach(says::add);
        var later = MixWords.later(mine, sure).strip();
        if (!later.isEmpty()) {
            says.add(later);
        }
        return says;
    }

    private static String part(MixDifference.Part part) {
        double pounds = Math.abs(Unit.POUND.fromBase(part.kgPutOut()));
        return "%s %s %s: %s %s"
                .formatted(
                        pounds < 1 ? Show.number(16 * pounds, 1) + " oz" : Show.number(pounds, 1) + " lb",
                        part.kgPutOut() > 0 ? "more" : "less",
                        part.feed().feed().name(),
                        cents(part.cents()),
                        part.cents() > 0 ? "more" : "less");
    }

    private static String cents(long cents) {
        return Show.cents(Math.abs(cents) / 100.0);
    }
}
