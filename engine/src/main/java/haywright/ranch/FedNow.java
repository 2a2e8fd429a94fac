package haywright.ranch;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.workings.Refused;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

/** What a group is fed today: as fed, per head per day, by id of the lot or the feed bought. The key is the group. */
public record FedNow(UUID group, Map<UUID, Quantity> amounts) {
    public FedNow {
        amounts = Collections.unmodifiableMap(new LinkedHashMap<>(amounts));
        amounts.forEach((feed, amount) -> {
            Refused.unlessOfKind(Kind.MASS_A_DAY, "amounts", amount);
            if (amount.value() < 0) {
                throw new Refused(
                        "amounts", amount.asTyped(), "pounds are 0 or more", "Enter pounds per head per day.");
            }
        });
    }
}
