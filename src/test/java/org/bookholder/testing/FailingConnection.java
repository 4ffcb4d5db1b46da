package org.bookholder.testing;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Optional;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** A database connection whose updates fail while it is told to let them. */
public final class FailingConnection {
    private final Connection connection;
    private Optional<SQLiteErrorCode> failure = Optional.empty();

    public FailingConnection(Connection connection) {
        this.connection = connection;
    }

    public void failWith(SQLiteErrorCode code) {
        failure = Optional.of(code);
    }

    public void work() {
        failure = Optional.empty();
    }

    public Connection asConnection() {
        return proxy(Connection.class, connection);
    }

    private <T> T proxy(Class<T> type, T target) {
        return type.cast(Proxy.newProxyInstance(
                type.getClassLoader(), new Class<?>[] {type}, (p, method, arguments) -> {
                    if (method.getName().equals("executeUpdate")) {
                        fail();
                    }
                    try {
                        Object result = method.invoke(target, arguments);
                        return result instanceof PreparedStatement statement
                                ? proxy(PreparedStatement.class, statement)
                                : result;
                    } catch (InvocationTargetException e) {
                        throw e.getCause();
                    }
                }));
    }

    private void fail() throws SQLException {
        if (failure.isPresent()) {
            throw new SQLiteException("failing as told", failure.get());
        }
    }
}
