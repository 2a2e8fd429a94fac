package haywright.app.report;

import haywright.diet.LeftOut;
import haywright.feeding.Offers;
import haywright.ration.Portion;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a letter or a card tells somebody to put out: the ration, or what is fed now where there is none. Where something in
 * that may not be fed, nothing: without it the rest is too little.
 */
record PutOut(Offers offers) {
    List<Portion> portions() {
        return !stopped().isEmpty()
                ? List.of()
                : offers.sure()
                        .or(offers::now)
                        .map(offer -> offer.mix().portions())
                        .orElse(List.of());
    }

    /** Feeds that they get now and may not be fed, where no ration takes its place; empty for most. */
    private List<LeftOut> stopped() {
        return offers.sure().isPresent()
                ? List.of()
                : offers.now().map(offer -> offer.mix().notAllowed()).orElse(List.of());
    }

    /** The same as an order, with whom to call; empty for most. */
    Optional<String> stop() {
        var out = stopped();
        return out.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        "Stop %s. The rest of what they get now is too little alone: call %s before the next feeding."
                                .formatted(
                                        out.stream()
                                                .map(left -> left.feed().name())
                                                .collect(Collectors.joining(" and ")),
                                        new WhomToCall(offers.yard().ranch()).adviser()));
    }
}
