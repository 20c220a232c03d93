# Built with everything, run with only what running needs. The container holds no database: it uses the one that
# DATABASE_URL names.
FROM node:20-bookworm-slim AS build
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
RUN npm ci --ignore-scripts
COPY tsconfig.json tsconfig.build.json vite.config.ts prisma.config.ts ./
COPY prisma prisma
COPY shared shared
COPY seed seed
COPY src src
RUN npm run build

FROM node:20-bookworm-slim
RUN apt-get update \
  && apt-get install -y --no-install-recommends tini \
  && rm -rf /var/lib/apt/lists/*
ENV NODE_ENV=production
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
# the bundled PostgreSQL is the one optional dependency that running would use
RUN npm ci --omit=dev --omit=optional --ignore-scripts && npm cache clean --force
COPY prisma/migrations prisma/migrations
COPY --from=build /app/dist dist
USER node
# inside a container, loopback reaches nobody; who may reach the port is up to whoever publishes it
ENV HOST=0.0.0.0 PORT=4380 LOG_LEVEL=info
EXPOSE 4380
HEALTHCHECK --interval=30s --timeout=5s --start-period=30s --retries=3 \
  CMD ["node", "-e", "fetch(`http://127.0.0.1:${process.env.PORT}/readyz`).then((r) => process.exit(r.ok ? 0 : 1), () => process.exit(1))"]
STOPSIGNAL SIGTERM
ENTRYPOINT ["/usr/bin/tini", "--"]
CMD ["node", "dist/src/server.js"]
