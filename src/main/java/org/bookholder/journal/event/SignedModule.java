package org.bookholder.journal.event;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.module.SimpleModule;
import org.bookholder.session.Remark;

/** Stores what people did with the name of their act, where it has one, and reads what earlier versions wrote without. */
final class SignedModule extends SimpleModule {
    private static final long serialVersionUID = 1L;

    SignedModule() {
        super("signed remarks");
        setMixInAnnotation(Remark.Signed.class, NameIfAny.class);
        addDeserializer(
                Remark.Signed.class,
                new AddedPartReader<>(
                        Remark.Signed.class,
                        stored -> new Remark.Signed(
                                stored.part("author", String.class),
                                stored.part("remark", Remark.class),
                                stored.part("name", String.class, ""))));
    }

    /** Makes the JSON library leave out an empty name. */
    interface NameIfAny {
        @JsonInclude(JsonInclude.Include.NON_EMPTY)
        String name();
    }
}
