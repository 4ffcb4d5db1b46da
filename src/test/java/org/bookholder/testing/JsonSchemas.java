package org.bookholder.testing;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.List;

/** Checks JSON against a JSON Schema of draft 2020-12. */
public final class JsonSchemas {
    private JsonSchemas() {}

    /** The violations of {@code schema} in {@code json}, one message each; empty if there are none. Both are JSON texts. */
    public static List<String> violations(String schema, String json) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(schema, InputFormat.JSON)
                .validate(json, InputFormat.JSON)
                .stream()
                .map(Error::toString)
                .toList();
    }
}
